"""The slip: an order told as sentences whose words are the controls.

A word says what stands in the order and who wrote it; what lies behind it (the tape,
the choice of drawings) is asked for when it is opened, so that a slip stays light.
"""

import contextlib
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from clothwright.app.sentence import (
    Opens,
    Pen,
    Runs,
    Sentence,
    Word,
    plain_why,
    stopped,
)
from clothwright.app.slipfile import Table
from clothwright.body import Body, measures
from clothwright.features import Feature, Number
from clothwright.findings import Finding, Severity
from clothwright.order import Draft
from clothwright.order.telling import show
from clothwright.order.together import Disagreement
from clothwright.paper import SeamKind
from clothwright.rules import Hand, Kind, RuleError
from clothwright.truing import walk
from clothwright.units import Unit, format_angle, format_length, opening


@dataclass(frozen=True)
class Reading:
    """What a slip is told from."""

    table: Table
    stitched: Table
    """The order as it was last kept; words that differ from it are thread."""

    features: tuple[Feature, ...]
    body: Body
    draft: Draft | None
    """The draft of this very order; None when it cannot be drafted."""

    against: tuple[Disagreement, ...]
    faults: tuple[str, ...]
    """Why it cannot be drafted, when it cannot and nothing disagrees."""

    unit: Unit
    house: str = ""
    """The house rules on the shelf, as text."""

    found: tuple[Finding, ...] = ()
    """What finishing found on the pieces."""

    newer: Mapping[str, str] = field(default_factory=dict)
    """Figures on the client's card that are others than the slip's, as written."""

    fitting: tuple[Sentence, ...] = ()
    """What is said of a fitting."""


def paragraphs(r: Reading) -> dict[str, list[dict[str, Any]]]:
    """The slip under its paragraph words, as sent to the page."""
    told = {
        "Measures": _measures(r),
        "Style": _style(r),
        "Seams": _seams(r),
        "Steps": _steps(r),
        "Fitting": r.fitting,
    }
    return {name: [s.plain() for s in sentences] for name, sentences in told.items()}


# -- measures ------------------------------------------------------------------------
_FIRST = ("B", "W", "H")


def _measures(r: Reading) -> list[Sentence]:
    taken = f"Taken {r.body.taken:%-d %B %Y}: " if r.body.taken else "Measured: "
    have = [c for c in _FIRST if c in r.body]
    runs: list[str | Word] = [taken]
    for code in have:
        runs += [f"{measures()[code].said} ", _measure(r, code), ", "]
    others = [c for c in r.body.values if c not in have]
    runs += [
        "and ",
        Word("card", f"{len(others)} more", Pen.INK, Opens.CARD, "all her measures"),
    ]
    guessed = _estimated(r)
    if guessed:
        few = len(guessed)
        runs.append(f"; {few} {'is' if few == 1 else 'are'} estimated")
    runs.append(".")
    rest: list[str | Word] = []
    for code in others:
        rest += [f"{measures()[code].said} ", _measure(r, code), ", "]
    out = [Sentence("measures", tuple(runs), stopped(rest))]
    if guessed:
        said: list[str | Word] = ["Estimated, not measured: "]
        for word in guessed:
            said += [word, ", "]
        out.append(Sentence("estimates", stopped(said)))
    if r.newer:
        said = ["Her card has other figures by now: "]
        said += [
            ", ".join(f"{measures()[c].said} {typed}" for c, typed in r.newer.items()),
            ". ",
            Word("card", "Use them", Pen.INK, Opens.ACT, do={"do": "card"}),
            ".",
        ]
        out.append(Sentence("newer", tuple(said)))
    out += _said_of_measures(r)
    return out


def _measure(r: Reading, code: str) -> Word:
    value = r.body.values[code]
    say = (
        format_angle(value.value)
        if measures()[code].kind == "angle"
        else format_length(value.value, r.unit, body=True)
    )
    return Word(f"m:{code}", say, Pen.INK, Opens.MEASURE, measures()[code].how)


def _estimated(r: Reading) -> list[Word]:
    if r.draft is None:
        return []
    n = r.draft.numbers
    out = []
    for key in r.draft.used:
        if n.hand(key) is Hand.ESTIMATED and key in measures():
            say = f"{measures()[key].said} {show(n[key], n.why(key).kind, r.unit)}"
            out.append(Word(f"m:{key}", say, Pen.GUESS, Opens.MEASURE))
    return out


_OF_BODY = re.compile(r"R\d+[a-z]?$")


def _said_of_measures(r: Reading) -> Iterator[Sentence]:
    if r.draft is None:
        return
    for i, f in enumerate(r.draft.findings):
        if _OF_BODY.match(f.code) and f.severity is not Severity.NOTE:
            yield Sentence(f"body {i}", (str(f),), grave=f.severity is Severity.REFUSE)


# -- style ---------------------------------------------------------------------------
_SLOT = re.compile(r"(\{\w+\}|\[[^\]]+\])")


def _style(r: Reading) -> list[Sentence]:
    out = []
    rows = {str(f["kind"]): f for f in r.table.get("feature", ())}
    kept = {str(f["kind"]): f for f in r.stitched.get("feature", ())}
    for f in r.features:
        mine, was = rows.get(f.kind, {}), kept.get(f.kind)
        out.append(_feature(r, f, mine, was))
    for d in r.against:
        if not d.kind:
            out.append(Sentence(f"lacks {d.why}", _way_out(d)))
    if r.faults:
        out.append(Sentence("cannot", (" ".join(r.faults),), grave=True))
    return out


def _feature(r: Reading, f: Feature, mine: Table, was: Table | None) -> Sentence:
    text = f.said_beside(r.features)
    slots = set(re.findall(r"\{(\w+)\}", text))
    runs: list[str | Word] = []
    named = False
    for part in _SLOT.split(text):
        if part.startswith("{"):
            runs.append(_field(r, f, part[1:-1], mine, was))
        elif part.startswith("["):
            named = True
            runs.append(_name(f, part[1:-1], was))
        elif part:
            runs.append(part)
    if not named:
        runs += [" ", _name(f, "More", was), "."]
    rest: list[str | Word] = []
    for name in type(f).model_fields:
        if name not in ("kind", "alteration") and name not in slots:
            rest += [f"{label(f, name)} ", _field(r, f, name, mine, was), ", "]
    off = Word(
        f"{f.kind}!",
        "Leave it off",
        Pen.INK,
        Opens.ACT,
        do={"do": "leave", "kind": f.kind},
    )
    said = tuple(_way_out(d) for d in r.against if d.kind == f.kind)
    said += tuple((str(x),) for x in _findings_of(r, f))
    return Sentence(f.kind, tuple(runs), (*stopped(rest), " ", off, "."), said)


def _name(f: Feature, say: str, was: Table | None) -> Word:
    pen = Pen.INK if was is not None else Pen.THREAD
    return Word(f.kind, say, pen, Opens.REST, f"the {f.kind}")


def label(f: Feature | type[Feature], field: str) -> str:
    """What a setting is called in the sentence behind the feature's name."""
    number = f.numbers().get(field)
    return number.name if number else field.replace("_", " ")


def _field(r: Reading, f: Feature, field: str, mine: Table, was: Table | None) -> Word:
    number = f.numbers().get(field)
    set_now = field in mine
    same = was is not None and was.get(field) == mine.get(field)
    pen = Pen.THREAD if not same else Pen.INK if set_now else Pen.PENCIL
    of, help_ = f"{f.kind}.{field}", label(f, field)
    if number is None:
        return Word(of, say_choice(getattr(f, field)), pen, Opens.CHOICE, help_)
    return Word(of, _say_number(r, number, getattr(f, field)), pen, Opens.TAPE, help_)


def say_choice(value: object) -> str:
    """A choice or a yes and no in words."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return "one step" if len(value) == 1 else f"{len(value) or 'no'} steps"
    return str(value.value) if isinstance(value, Enum) else str(value) or "none"


_SHARES = {1.0: "the whole", 0.75: "three quarters", 0.5: "half", 0.25: "a quarter"}


def _say_number(r: Reading, number: Number, value: float | None) -> str:
    if r.draft is not None:
        with contextlib.suppress(RuleError):
            value = r.draft.numbers[number.key]
    if value is None:
        value = number.default(r.unit)
    if value is None:
        return "as its rule says"
    return say_size(value, number.kind, r.unit)


def say_size(value: float, kind: Kind, unit: Unit) -> str:
    """A number in the reader's unit; simple shares in words."""
    if kind is Kind.RATIO:
        if abs(value - 1 / 3) < 0.005:
            return "a third"
        if value in _SHARES:
            return _SHARES[value]
    if kind is Kind.LENGTH and abs(value) < 0.005:
        return "nothing"
    return show(value, kind, unit)


def _way_out(d: Disagreement) -> Runs:
    """What does not go together, with the ways out as words."""
    runs: list[str | Word] = [f"{plain_why(d.why)} "]
    ways = [
        Word(f"+{k}", f"Add the {k}", Pen.INK, Opens.ACT, do={"do": "add", "kind": k})
        for k in d.add
    ]
    ways += [
        Word(
            f"-{k}",
            f"Leave off the {k}",
            Pen.INK,
            Opens.ACT,
            do={"do": "leave", "kind": k},
        )
        for k in d.leave
    ]
    for i, w in enumerate(ways):
        runs += [" or " if i else "", w]
    if ways:
        runs.append(".")
    return tuple(runs)


def _findings_of(r: Reading, f: Feature) -> Iterable[Finding]:
    """What the draft has to say about a feature's own numbers."""
    if r.draft is None:
        return ()
    mine = {n.symbol for n in f.numbers().values()}
    return tuple(
        x
        for x in r.draft.findings
        if x.severity is not Severity.NOTE and x.place in mine
    )


# -- seams ---------------------------------------------------------------------------
def _seams(r: Reading) -> list[Sentence]:
    if r.draft is None:
        return [Sentence("seams", ("The seams wait until the order can be drawn.",))]
    sheet, fmt = r.draft.sheet, lambda cm: format_length(cm, r.unit)
    real = [s for s in sheet.seams if s.kind is not SeamKind.TWIN]
    findings = (*r.draft.findings, *r.found)
    bad = [f for f in findings if f.severity is Severity.REFUSE]
    if bad:
        runs: Runs = (f"{_count(len(bad), 'thing')} to mend before anything is cut.",)
    else:
        one = len(real) == 1
        runs = ("The seam meets." if one else f"All {len(real)} seams meet.",)
    out = [Sentence("seams", runs, grave=bool(bad))]
    out += [Sentence(f"grave {i}", (str(f),), grave=True) for i, f in enumerate(bad)]
    in_features = {x for f in r.features for x in map(id, _findings_of(r, f))}
    out += [
        Sentence(f"look {i}", (str(f),))
        for i, f in enumerate(findings)
        if f.severity is Severity.WARN
        and id(f) not in in_features
        and not _OF_BODY.match(f.code)
    ]
    for s in real:
        w = walk(sheet, s)
        name = opening(s.name)
        word = Word(f"s:{s.code}", name, Pen.PENCIL, Opens.SEAM, "Walk it")
        told = w.sentence(fmt).split(": ", 1)[-1]
        out.append(Sentence(f"s:{s.code}", (word, f": {told}")))
    return out


def _steps(r: Reading) -> list[Sentence]:
    if r.draft is None:
        return []
    n = len(r.draft.steps)
    word = Word("steps", f"{n} steps", Pen.PENCIL, Opens.STEP, "Replay the draft")
    return [Sentence("steps", (word, " by ruler and tape."))]


def _count(n: int, thing: str) -> str:
    return f"{'One' if n == 1 else n} {thing}{'' if n == 1 else 's'}"

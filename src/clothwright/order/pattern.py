"""From a draft to the finished pattern: what is cut, how often, from which cloth."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from clothwright.features import Feature
from clothwright.features.operations import Hazard
from clothwright.features.said import LINING, said_of
from clothwright.findings import Finding, Severity
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.drawn import CutCount, DrawnPattern
from clothwright.finishing.finish import Finishing, finish
from clothwright.finishing.level_hems import level_hems
from clothwright.order.cautions import of_garment
from clothwright.order.draft import Draft
from clothwright.paper import LEFT_HALF, LEFT_PIECE, Run, Sheet
from clothwright.rules import Hand
from clothwright.units import pretty_length

_ON_FOLD, _PAIR = "1 on fold", "2 (1 pair)"


@dataclass(frozen=True)
class Pattern:
    """A draft and its finished pieces."""

    draft: Draft
    drawn: DrawnPattern
    findings: tuple[Finding, ...]
    """The draft's findings and those of finishing."""

    @property
    def failed(self) -> bool:
        """True when nothing may be cut so."""
        return any(f.severity is Severity.REFUSE for f in self.findings)


def pattern(draft: Draft, *, words: bool = True) -> Pattern:
    """Finish every piece of a draft; `words` as `finishing.finish`."""
    drawn, found = finish(draft.sheet, finishing_of(draft), words=words)
    findings = (*draft.findings, *found)
    faults = tuple(str(f) for f in findings if f.severity is Severity.REFUSE)
    return Pattern(draft, replace(drawn, failures=faults), findings)


def finishing_of(draft: Draft, *, words: bool = True) -> Finishing:
    """How the pieces of a draft are finished: their order, cloths, counts, and notes
    where `words` are wanted."""
    order, sheet = draft.order, draft.sheet
    said, guessed, hazards = _told(draft) if words else _Told()
    hems = level_hems(sheet, order.said)
    allowances = Allowances(order.unit, order.said, hems=hems)
    cuts = cuts_of(draft)
    within: tuple[str, ...] = ()
    if any(c.cloth == "interlining" for of in cuts.values() for c in of):
        width = allowances.interlining
        within = (f"Interlining is cut {width} outside the stitch line.",)
    return Finishing(
        title=f"{order.garment}" + (f", order {order.number}" if order.number else ""),
        client=order.body.client,
        taken=order.body.taken,
        order=order.said.in_order(sheet.pieces),
        cuts=cuts,
        allowances=allowances,
        fmt=lambda cm: pretty_length(cm, order.unit, unit_mark=False),
        nap=order.shell.nap,
        taped=frozenset(_on_both(r for f in order.features for r in f.taped(sheet))),
        failures=draft.failures(),
        cautions=of_garment(hazards, order),
        notes=(*said, *within, *guessed),
        cloths={"shell": order.shell.name or "shell"},
    )


class _Told(NamedTuple):
    """What the features say on the sheets, what the measures do, and what is to be
    minded while it is made."""

    said: tuple[str, ...] = ()
    guessed: tuple[str, ...] = ()
    hazards: frozenset[Hazard] = frozenset()


def _told(draft: Draft) -> _Told:
    order, sheet = draft.order, draft.sheet

    def fmt(cm: float) -> str:
        return pretty_length(cm, order.unit)

    said = (
        text
        for f in order.features
        for text in (
            *(one.told(fmt) for one in f.notions(draft.numbers, sheet)),
            *f.notes(draft.numbers, sheet, fmt),
        )
    )
    hazards = (
        h
        for f in order.features
        for op in f.operations(draft.numbers, sheet, fmt)
        for h in op.hazards
    )
    return _Told(tuple(said), guessed_of(draft), frozenset(hazards))


def guessed_of(draft: Draft) -> tuple[str, ...]:
    """A sentence on the measures that the draft rests on and nobody took; none where
    all were."""
    guessed = (
        draft.numbers.why(k)
        for k in draft.used
        if draft.numbers.hand(k) is Hand.ESTIMATED
    )
    names = ", ".join(f"{r.name} ({r.symbol})" for r in guessed)
    return (f"Estimated, not measured: {names}. Make a toile first.",) if names else ()


def cuts_of(draft: Draft) -> Mapping[str, tuple[CutCount, ...]]:
    """What is cut from each piece of a draft."""
    return _of_sides(cut_list(draft.sheet, draft.order.features), draft.apart)


_ONCE = "1, right side up"


def _of_sides(
    cuts: Mapping[str, tuple[CutCount, ...]], apart: frozenset[str]
) -> Mapping[str, tuple[CutCount, ...]]:
    """Of pieces that differ on the two sides, each is cut once (truing 10)."""
    out = dict(cuts)
    for code in apart:
        once = tuple(CutCount(c.cloth, 1, _ONCE) for c in cuts[code])
        out[code] = once
        if code + LEFT_PIECE in cuts:
            out[code + LEFT_PIECE] = once
    return out


def _on_both(runs: Iterable[Run]) -> Iterable[tuple[str, str]]:
    """Edges of a half, and their names on the left side where that is another."""
    for piece, edge, _ in runs:
        yield piece, edge
        yield piece + LEFT_PIECE, edge
        yield piece, edge + LEFT_HALF


def cut_list(
    sheet: Sheet, features: Iterable[Feature]
) -> Mapping[str, tuple[CutCount, ...]]:
    """How many of each piece are cut from which cloth (first garment 15, 19)."""
    out: dict[str, tuple[CutCount, ...]] = {}
    features = tuple(features)
    about = said_of(features)
    said = {code: c for f in features for code, c in f.cuts(sheet).items()}
    again = {code: c for f in features for code, c in f.cut_again(sheet).items()}
    for code, piece in sheet.pieces.items():
        if code in said:
            cut = said[code]
            out[code] = tuple(
                CutCount(k, cut.count, cut.how, cut.bias) for k in cut.cloths
            )
            continue
        fold = piece.fold is not None
        count, how = (1, _ON_FOLD) if fold else (2, _PAIR)
        alone = "lining" if code.startswith(LINING) else "shell"
        cloths = about.cloths(code) or (alone,)
        out[code] = tuple(CutCount(c, count, how) for c in cloths)
    for code, cloth in again.items():
        shell, *inside = out[code]
        out[code] = (shell, replace(shell, cloth=cloth), *inside)
    return out

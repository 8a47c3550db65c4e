"""Telling where numbers come from, and what features there are, in plain lines."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from clothwright.curves import distance
from clothwright.features import KINDS, Feature, Number
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import ALTERATIONS
from clothwright.features.laid import laid
from clothwright.features.parts import by_part
from clothwright.features.said import seam_codes
from clothwright.order.draft import Draft
from clothwright.paper import Step
from clothwright.rules import Kind, Reason, RuleError
from clothwright.truing import walk
from clothwright.units import Unit, format_angle, format_length, retold


def show(value: float, kind: Kind, unit: Unit) -> str:
    """A number in the user's unit, by what it counts."""
    if kind is Kind.ANGLE:
        return format_angle(value)
    if kind is Kind.COUNT:
        return f"{value:.0f}"
    if kind is Kind.RATIO:
        return f"{round(value, 3):g}"
    return format_length(value, unit, body=kind is Kind.BODY)


def tell_all(draft: Draft) -> list[str]:
    """A line for every number, point, edge and seam that can be asked for."""
    lines = []
    for heading, named in _all(draft).items():
        lines.append(heading)
        lines += [
            "  ".join(("", n.name, *filter(None, (n.size, n.words)))) for n in named
        ]
    return lines


def tell_near(draft: Draft, words: str) -> list[str]:
    """Lines like those of `tell_all` for what is called by these words, where nothing
    has them as its name: "waist dart" finds fd, front waist dart."""
    wanted = re.split(r"[\s,_.]+", words.lower().strip())
    return [
        "  ".join(filter(None, (n.name, n.size, n.words)))
        for named in _all(draft).values()
        for n in named
        if set(wanted) <= set(re.split(r"\W+", n.words.lower()))
    ]


class _Named(NamedTuple):
    """What can be asked for: its name, how large it is, and what it is in words."""

    name: str
    size: str
    words: str


def _all(draft: Draft) -> dict[str, list[_Named]]:
    """All that can be asked for, under headings."""
    unit, sheet = draft.order.unit, draft.sheet
    numbers = []
    for key in draft.numbers.keys():  # noqa: SIM118
        try:
            r = draft.numbers.why(key)
        except RuleError:
            continue
        numbers.append(_Named(r.symbol, show(r.value, r.kind, unit), r.name))
    made = {s.makes: s.says for s in draft.steps}
    edges = [
        _Named(
            f"{p.code}.{e.name}",
            format_length(e.length, unit),
            f"{p.name.lower()}, {e.name}",
        )
        for p in sheet.pieces.values()
        for e in p.edges
    ]
    seams = [(s.code, s.name) for s in sheet.seams]
    seams += [(line.code, line.name) for line in laid(sheet, draft.numbers)]
    return {
        "Numbers": numbers,
        "Points": [_Named(p, "", made.get(p, "")) for p in sheet.points],
        "Edges": edges,
        "Seams": [_Named(code, "", name) for code, name in seams],
    }


def tell_why(draft: Draft, name: str) -> list[str] | None:
    """Why a number (by symbol or key), a point or an edge is as it is, or what a seam
    joins; None when nothing has that name."""
    key = key_of(draft, name)
    if key is not None:
        return list(_thread(draft.numbers.why(key), draft.order.unit))
    piece, _, edge = name.rpartition(".")
    if piece in draft.sheet.pieces and draft.sheet.piece(piece).has(edge):
        return list(_edge(draft, piece, edge))
    steps = [s for s in draft.steps if s.makes == name]
    steps = steps or [
        s for s in draft.steps if any(a.symbol == name for a in s.amounts)
    ]
    if not steps and name in draft.sheet.points:  # put there beside what a step makes
        steps = [s for s in draft.steps if s.after and name in s.after.points][:1]
    if steps:
        return [line for s in steps for line in _step(draft, s)]
    return _seam(draft, name)


def why_of(draft: Draft, name: str) -> list[Reason]:
    """The reasons behind a number, or behind the steps that made a point or an edge;
    none when nothing has that name."""
    key = key_of(draft, name)
    if key is not None:
        return [draft.numbers.why(key)]
    keys = [a.key for s in steps_of(draft, name) for a in s.amounts if a.key]
    if not keys and "." in name:  # traced with its piece
        return why_of(draft, name.rpartition(".")[0])
    return [draft.numbers.why(k) for k in dict.fromkeys(keys)]


def steps_of(draft: Draft, name: str) -> list[Step]:
    """The steps that made a point, an edge or a piece, then those that made the marks
    they were drawn from, and so on back."""
    steps = draft.steps[::-1]
    todo = [s for s in steps if s.makes == name]
    piece, _, edge = name.rpartition(".")
    if piece in draft.sheet.pieces and draft.sheet.piece(piece).has(edge):
        todo += [s for s in steps if _drew(s, draft, piece, edge)][:1]
        path = draft.sheet.edge(piece, edge).path
        ends = [
            mark
            for mark, p in draft.sheet.points.items()
            if min(distance(p, path.start), distance(p, path.end)) < _SAME
        ]
        todo += [s for s in steps if s.makes in ends]
    out: list[Step] = []
    while todo:
        step = todo.pop(0)
        if step not in out:
            out.append(step)
            todo += [s for s in steps if s.makes in step.frm]
    return out


def _drew(step: Step, draft: Draft, piece: str, edge: str) -> bool:
    """Whether a line of a step runs between the ends of an edge."""
    path = draft.sheet.edge(piece, edge).path
    ends = (path.start, path.end)
    return any(
        max(distance(line.start, a), distance(line.end, b)) < _SAME
        for line in step.lines
        for a, b in (ends, ends[::-1])
    )


_SAME = 0.6
"""Truing moves the end of a line less than this, cm (truing 4)."""


def key_of(draft: Draft, name: str) -> str | None:
    """The key of a number by its symbol or key; None when there is none such."""
    numbers = draft.numbers
    if name in numbers:
        return name
    for key in numbers.keys():  # noqa: SIM118
        try:
            if numbers.why(key).symbol == name:
                return key
        except RuleError:
            continue
    return None


def _thread(
    r: Reason, unit: Unit, depth: int = 0, told: set[str] | None = None
) -> Iterator[str]:
    """The thread of a number; what stands in it already is not followed again."""
    told = set() if told is None else told
    pad = "  " * depth
    how = f" = {retold(r.formula, unit)}" if r.formula else ""
    sure = f", ± {show(r.sigma, r.kind, unit)}" if r.sigma is not None else ""
    source = f" [{r.source}]" if r.source else ""
    yield (
        f"{pad}{r.symbol}{how}: {show(r.value, r.kind, unit)}, {r.name} "
        f"({r.hand.value}{sure}){source}"
    )
    if depth == 6 or r.key in told:
        return
    told.add(r.key)
    for b in r.because:
        yield from _thread(b, unit, depth + 1, told)


def _step(draft: Draft, s: Step) -> Iterator[str]:
    unit = draft.order.unit
    number = draft.steps.index(s) + 1
    yield f"{s.makes}: {s.says} (step {number}, {s.feature})"
    if s.frm:
        yield f"  from {', '.join(s.frm)}"
    if s.detail:
        yield f"  {s.detail}"
    for a in s.amounts:
        how = a.how.format("…")
        if a.key:
            lines = _thread(draft.numbers.why(a.key), unit, 1)
            yield f"  {how}: {next(lines).strip()}"
            yield from lines
        else:
            kind = Kind.ANGLE if a.angle else Kind.LENGTH
            yield f"  {how}: {show(a.value, kind, unit)}"


def _edge(draft: Draft, piece: str, edge: str) -> Iterator[str]:
    unit = draft.order.unit
    e = draft.sheet.edge(piece, edge)
    yield f"{piece}.{edge}: {format_length(e.length, unit)}, {e.kind.value}"
    for s in draft.sheet.seams_of(piece, edge):
        other = (
            s.right
            if any((r.piece, r.edge) == (piece, edge) for r in s.left)
            else (s.left)
        )
        yield (
            f"  {s.code}, {s.name}: sewn to {' + '.join(str(r) for r in other)}, "
            f"from {s.start} to {s.end}"
        )
    for step in draft.steps:
        if step.makes == f"{piece}.{edge}":
            yield from _step(draft, step)


def _seam(draft: Draft, code: str) -> list[str] | None:
    """A seam by its code, or that the garment has none such."""

    def show(cm: float) -> str:
        return format_length(cm, draft.order.unit)

    for s in draft.sheet.seams:
        if s.code == code:
            w = walk(draft.sheet, s)
            return [
                f"{code}: {s.name}, {s.kind.value}, from {s.start} to {s.end}",
                f"  {' + '.join(map(str, s.left))}: {show(w.left)}",
                f"  {' + '.join(map(str, s.right))}: {show(w.right)}",
                f"  {w.sentence(show)}",
            ]
    for line in laid(draft.sheet, draft.numbers):
        if line.code == code:
            return [
                f"{code}: {line.name}, from {line.start} to {line.end}",
                f"  {' + '.join(line.left)}: {show(line.left_length)}",
                f"  {' + '.join(line.right)}: {show(line.right_length)}",
            ]
    meant = dict(seam_codes()).get(code.partition(".")[0])
    return [f"{code}: {meant}; this garment has no such seam"] if meant else None


def tell_features() -> list[str]:
    """All features under the parts of a garment, each with its title where that says
    more than its kind."""
    lines: list[str] = []
    for part, kinds in by_part().items():
        lines.append(part)
        for kind in kinds:
            title = KINDS[kind].title
            more = "" if title.lower() == kind else f"  {title}"
            lines.append(f"  {kind:<24}{more}".rstrip())
    return lines


def tell_feature(kind: str) -> list[str] | None:
    """A feature with what it needs and its settings; None when there is none such."""
    return _feature(KINDS[kind], kind) if kind in KINDS else None


def _feature(f: type[Feature], name: str) -> list[str]:
    told = re.sub(r"\{(\w+)\}", lambda m: m[1].upper(), f.sentence)
    told = told.replace("[", "").replace("]", "")
    lines = [f'kind = "{name}"', f"  {told}"]
    lines += [
        f"  {why[0].upper()}{why[1:]}." for why in dict.fromkeys(f.needs.values())
    ]
    numbers = f.numbers()
    for field, info in f.model_fields.items():
        if field == "kind":
            continue
        n = numbers.get(field)
        if n is not None:
            lines.append(f"  {field}: {n.name}{_default(n)}")
            continue
        if f is Fitting:
            lines += _alterations()
            continue
        choices = getattr(info.annotation, "__members__", None)
        if choices:
            words = " | ".join(f'"{c.value}"' for c in choices.values())
            usual = getattr(info.default, "value", None)
            left_out = f'; left out: "{usual}"' if usual is not None else ""
            lines.append(f"  {field}: {words}{left_out}")
        else:
            lines.append(f"  {field}: true | false")
    return lines


def _alterations() -> Iterator[str]:
    yield "  [[feature.alteration]], each with do and by:"
    for a in ALTERATIONS:
        word, (low, high) = a.model_fields["do"].default, a.usual
        yield f'    do = "{word}": {a.title}; usual {low:g} to {high:g} cm {a.counted}'


def _default(n: Number) -> str:
    if n.kind is Kind.LENGTH:
        if n.cm is None:
            base = "; by its rule"
        else:
            inch = format_length((n.inch or 0.0) * 2.54, Unit.IN, finest=16)
            base = (
                f"; {n.cm:g} cm, or {inch}" if n.inch is not None else f"; {n.cm:g} cm"
            )
    else:
        base = "; by its rule" if n.cm is None else f"; {n.cm:g}"
    return base + f" [{n.source}]"

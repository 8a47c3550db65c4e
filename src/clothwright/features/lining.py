"""Lining: to the edge, or below the facing (first garment 15)."""

from collections.abc import Iterable
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Line, Motion, Path, Point, direction, inset
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.grain import longest_line
from clothwright.features.lining_seams import with_lining_seams
from clothwright.features.sewn_halves import sewn_back, sewn_front
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
    cut,
    redraw,
    spot_on,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "first garment 15"
_SLACK = 0.5
"""The lining hangs this much below the shell's waist, cm (15)."""


class Mode(Enum):
    """How far the lining goes."""

    TO_EDGE = "to the edge"
    """Bagged at neck, armholes and slanted edges; in place of facings."""

    BELOW_FACING = "below the facing"
    """From the facing's free edge down to the waist."""


class Lining(Feature):
    """Lining of the bodice and the peplum."""

    kind: Literal["lining"] = "lining"
    title: ClassVar[str] = "Lining"
    sentence: ClassVar[str] = "It is [lined] {mode}."
    gives: ClassVar[frozenset[str]] = frozenset({"lining"})
    clashes: ClassVar[dict[str, str]] = {"lining": "an order has one lining"}

    mode: Mode = Mode.BELOW_FACING
    roll: Annotated[
        Length | None,
        Number(
            "rho_l",
            "ρ lining",
            "roll of the lining",
            "first garment 14.4",
            0.3,
            0.125,
            0.0,
            0.6,
        ),
    ] = None
    hem_shorter: Annotated[
        Length | None,
        Number(
            "short",
            "shorter",
            "lining of the peplum shorter at the hem",
            _SRC,
            1.5,
            0.625,
            0.0,
            4.0,
        ),
    ] = None

    @property
    def to_edge(self) -> bool:
        """True when it is bagged to the shell's own edges."""
        return self.mode is Mode.TO_EDGE

    def provides(self) -> frozenset[str]:
        if self.to_edge:
            return self.gives | {"inside finish"}
        return self.gives

    def wants(self) -> dict[str, str]:
        if self.to_edge:
            return {"sleeveless": "a lining to the edge is for a sleeveless top"}
        return {
            "sleeveless": "a lining below the facing is for a sleeveless top; leave "
            "it off",
            "inside finish": "a lining below the facing needs the facing",
            "front panel seam": "a lining below the facing needs a front princess "
            "line; with a side dart, line to the edge",
        }

    def forbids(self) -> dict[str, str]:
        if self.to_edge:
            return {
                **self.clashes,
                "inside finish": "a lining to the edge takes the place of the facing; "
                "leave one off",
            }
        return {
            **self.clashes,
            "open back": "with an open back the facing runs down beside the edge; "
            "line to the edge",
            "back neck dart": "with a dart at the back neck, line to the edge",
        }

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LINING, "the lining", self._draft),)

    def _draft(self, d: Drafting) -> None:
        d.part = "lining"
        sheet = d.sheet
        sheet = _to_edge(sheet, d.n.rho_l) if self.to_edge else _below_facing(sheet)
        sheet = with_lining_seams(_peplum(sheet, d.n.short))
        d.lay(
            Verb.TRACE,
            sheet,
            "lining",
            "pieces of the lining from the trued shell",
            amounts=(
                ("longer at the waist", _SLACK),
                ("shorter at the peplum's hem", "short"),
                *((("inside its edges by {}", "rho_l"),) if self.to_edge else ()),
            ),
            detail="" if self.to_edge else "less what the facing covers",
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return ()


def _slid(piece: Piece, first_edge: str, last_edge: str, path: Path) -> Path:
    """The path, in place of a run of edges, cut where it meets the lines of the run's
    neighbours, all produced by 1.5 cm."""
    before, after = piece.before(first_edge).path, piece.after(last_edge).path

    def long(p: Path, start: float, end: float) -> Path:
        parts = list(p.segments)
        if start:
            parts.insert(0, Line(p.start - p.start_direction * start, p.start))
        if end:
            parts.append(Line(p.end, p.end + p.end_direction * end))
        return Path(tuple(parts))

    wide = long(path, 1.5, 1.5)
    first = [s for s, _ in wide.meets(long(before, 0.0, 1.5))]
    last = [s for s, _ in wide.meets(long(after, 1.5, 0.0))]
    if not first or not last:
        raise PaperError(f"the lining of {piece.code} does not meet at {first_edge}")
    # of several meetings, the one nearest to the line's own end
    start = min(first, key=lambda s: abs(s - 1.5))
    end = min(last, key=lambda s: abs(s - (wide.length - 1.5)))
    return wide.between(start, end)


def _reedge(sheet: Sheet, code: str, name: str, path: Path, kind: EdgeKind) -> Sheet:
    p = sheet.piece(code)
    return redraw(sheet, code, [name], [Edge(name, _slid(p, name, name, path), kind)])


def _copy(sheet: Sheet, shell: str) -> Sheet:
    p = sheet.piece(shell)
    return sheet.put(
        replace(p, code=f"L.{shell}", name=f"{p.name} lining", marks=(), lines=())
    )


def _bodice(sheet: Sheet) -> list[str]:
    return [c for c in ("FC", "FS", "F", "BC", "BS", "B") if c in sheet.pieces]


def _rolled(sheet: Sheet, code: str, rho: float) -> Sheet:
    """Neck, armhole and slant of one lining piece set inside by the roll."""
    p = sheet.piece(code)
    tip_first = "tip" if p.has("shoulder") else "split"
    if p.has("slant"):
        sheet = _rolled_back(sheet, code, rho)
    for name in ("neck", "neck side", "armhole"):
        if not p.has(name) or (name == "neck" and p.has("slant")):
            continue
        path = p.edge(name).path
        start = end = rho
        if name == "neck" and p.has("cf"):
            end = 0.0
        if name == "neck" and p.has("cb"):
            start = 0.0
        if name == "armhole":
            front = p.code[2] == "F"
            whole = tip_first == "tip" and not p.has("panel")
            mid = 0.0 if whole else 0.45 * rho
            under, tip = (mid, rho) if tip_first == "tip" else (0.0, 0.45 * rho)
            start, end = (under, tip) if front else (tip, under)
        sheet = _reedge(sheet, code, name, inset(path, start, end), p.edge(name).kind)
    return sheet


def _rolled_back(sheet: Sheet, code: str, rho: float) -> Sheet:
    """Slant and neck set inside together: their corner may be rounded, and then has no
    meeting of two lines to be found."""
    p = sheet.piece(code)
    slant, neck = p.edge("slant"), p.edge("neck")
    path = _slid(p, "slant", "neck", inset(slant.path + neck.path, rho, rho))
    a, b = path.split_at_length(path.length_to_point(slant.path.end))
    new = [replace(slant, path=a), replace(neck, path=b)]
    return redraw(sheet, code, ["slant", "neck"], new)


def _to_edge(sheet: Sheet, rho: float) -> Sheet:
    for shell in _bodice(sheet):
        code = f"L.{shell}"
        sheet = _rolled(_copy(sheet, shell), code, rho)
        sheet = _longer(sheet, code)
    return sheet


def _longer(sheet: Sheet, code: str) -> Sheet:
    for name in ("waist", "waist side"):
        p = sheet.piece(code)
        if p.has(name):
            edge = p.edge(name)
            sheet = _reedge(
                sheet, code, name, inset(edge.path, -_SLACK, -_SLACK), edge.kind
            )
    return sheet


def _below_facing(sheet: Sheet) -> Sheet:
    """Cut each shell piece along the facing's free edge and keep what lies below."""
    for half, facing, codes in (
        (sewn_front(sheet), "FF", ("FC", "FS", "F")),
        (sewn_back(sheet), "BF", ("BC", "BS", "B")),
    ):
        free = sheet.edge(facing, "free").path
        for shell in codes:
            if shell not in sheet.pieces:
                continue
            m = half.motion if shell in ("FS", "BS") else Motion()
            line = free.moved(m.inverse())
            if shell == "BS":
                line = _to_panel(sheet, free, line, half.panel)
            sheet = _lower_part(sheet, shell, line)
    return sheet


def _to_panel(sheet: Sheet, free: Path, line: Path, panel: Path | None) -> Path:
    """The facing's edge on the side back, led to the panel seam where it meets the
    back's: below the dart's point the two panels no longer lie edge to edge."""
    if panel is None:
        return line
    hits = panel.meets(free)
    if not hits:
        return line
    s, t = hits[0]
    mine = sheet.edge("BS", "panel").path.reversed()
    part = line.between(0.0, t)
    return part.pinned(part.start, mine.at_length(s))


def _lower_part(sheet: Sheet, shell: str, line: Path) -> Sheet:
    p = sheet.piece(shell)
    wide = Path(
        (
            Line(line.start - line.start_direction * 1.0, line.start),
            *line.segments,
            Line(line.end, line.end + line.end_direction * 1.0),
        )
    )
    hits: list[tuple[float, str, Point]] = []
    for e in p.edges:
        for s, _ in wide.meets(e.path):
            if all(abs(s - h[0]) > 1e-4 for h in hits):
                hits.append((s, e.name, wide.at_length(s)))
    hits.sort()
    if len(hits) < 2:
        return sheet
    (s0, e0, a), (s1, e1, b) = hits[0], hits[-1]
    if e0 == e1:
        return sheet
    parts = cut(
        Sheet().put(p),
        shell,
        wide.between(s0, s1),
        spot_on(p, e0, a),
        spot_on(p, e1, b),
        edge="join",
        seam="join",
        seam_name="facing join",
        into=(("one", ""), ("two", "")),
    )
    faced = ("neck", "shoulder", "armhole", "slant")
    keep = next(
        (q for q in parts.pieces.values() if not any(q.has(e) for e in faced)), None
    )
    if keep is None:
        return sheet
    code = f"L.{shell}"
    grain = keep.grain or p.grain
    out = replace(
        keep, code=code, name=f"{p.name} lining", marks=(), lines=(), grain=grain
    )
    if out.grain and not (out.contains(out.grain[0]) and out.contains(out.grain[1])):
        out = replace(out, grain=longest_line(out, direction(*out.grain)))
    return _longer(sheet.put(out), code)


def _peplum(sheet: Sheet, shorter: float) -> Sheet:
    for shell in ("PF", "PB", "PFC", "PFS", "PBC", "PBS"):
        if shell not in sheet.pieces:
            continue
        sheet = _copy(sheet, shell)
        code = f"L.{shell}"
        hem = sheet.edge(code, "hem")
        if shorter > 0:
            sheet = _reedge(
                sheet, code, "hem", inset(hem.path, shorter, shorter), hem.kind
            )
    return sheet

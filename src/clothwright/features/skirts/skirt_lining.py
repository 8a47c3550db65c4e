"""Lining of a fitted or gored skirt, hung from the waist seam (transformations §6).

The net of the shell, shorter at the hem; its darts are laid as pleats. Beside a vent
the two backs differ: the right has the shell's extension, the left is cut back by as
much, since the shell's own extension is folded in there.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path, Point, inset, mirror_in
from clothwright.features.about import About
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains, spaced
from clothwright.features.linings.walked import lay_walked
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.contour_band import BANDS
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.features.skirts.skirt_seams import waist_chain
from clothwright.features.skirts.skirt_sewing import lining_operations
from clothwright.features.skirts.slit_edges import without_facing
from clothwright.features.skirts.wrap_skirt_drawing import EDGE, FACING
from clothwright.features.wholes import before_yoke
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    NotchPair,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    meetings,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM
from clothwright.units.fields import Length

_SRC = "transformations §6"

LEFT_BACK = "L.SBL"
"""Left back of the lining beside a vent."""

_NAMES = {FRONT: "Front lining", BACK: "Back lining"}


class SkirtLining(Feature):
    """Lining of a skirt."""

    kind: Literal["skirt lining"] = "skirt lining"
    title: ClassVar[str] = "Lining of a skirt"
    sentence: ClassVar[str] = "It is [lined], {hem_shorter} shorter at the hem."
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, None, ("skirt lining",), {"hem": Role.TURNED})
        for code in ("L.SF", "L.SB", LEFT_BACK, "L.SG")
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S145": "front lining of a wrap skirt to the facing of its edge",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"skirt lining"})
    needs: ClassVar[dict[str, str]] = {
        "shaped skirt": "only a straight or a gored skirt is lined so; leave it off",
        "band": "the lining hangs from the seam of a waistband",
    }

    hem_shorter: Annotated[
        Length | None,
        Number(
            "short_S",
            "shorter",
            "lining of the skirt shorter at the hem",
            _SRC,
            2.5,
            1.0,
            1.0,
            8.0,
            (2.0, 3.5),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LINING, "the lining", _draft),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if LEFT_BACK not in sheet.pieces:
            return {}
        left = Cuts("1, right side up", 1, ("lining",))
        right = Cuts("1, right side down", 1, ("lining",))
        return {LEFT_BACK: left, f"L.{BACK}": right}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        halves = [p for c in (BACK, FRONT) if (p := sheet.pieces.get(f"L.{c}"))]
        if any(p.has("dart centre") for p in halves):
            yield "Lining: lay the darts as pleats, folded the other way."

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return lining_operations(sheet)


def _draft(d: Drafting) -> None:
    d.part = "skirt lining"
    for code in (FRONT, BACK, GORE):
        if code not in d.sheet.pieces:
            continue
        shell = without_facing(before_yoke(d.sheet, code))
        beside = FACING in d.sheet.pieces and code == FRONT
        piece = _shorter(_beside_facing(d, shell) if beside else shell, d.n.short_S)
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            piece.code,
            f"{piece.name.lower()} on the shell's net line",
            amounts=(("shorter at the hem", "short_S"),),
            detail="as far as the loose edge of the facing" if beside else "",
            over=(shell.outline,),
        )
    if Chains(d.sheet).has(f"L.{BACK}", "vent"):
        _left_back(d)
    lay_walked(d, d.sheet.sew(*_seams(d.sheet, d.n.short_S)))


def _beside_facing(d: Drafting, front: Piece) -> Piece:
    """The front of a wrap as far as the facing's loose edge, which is now sewn."""
    facing = d.sheet.piece(FACING)
    free = facing.edge("free")
    d.sheet = d.sheet.put(facing.with_edge(replace(free, kind=EdgeKind.SEAM)))
    top, foot = free.path.end, free.path.start
    loop: list[Edge] = []
    for e in front.edges:
        if e.name == EDGE:
            loop.append(Edge("join", free.path.reversed()))
        elif e.name == front.before(EDGE).name:
            upto = e.path.between(0.0, e.path.length_to_point(top))
            loop.append(e.along(upto.pinned(e.path.start, top)))
        elif e.name == "hem":
            rest = e.path.between(e.path.length_to_point(foot), e.path.length)
            loop.append(e.along(rest.pinned(foot, e.path.end)))
        else:
            loop.append(e)
    return front.with_edges(loop)


def _shorter(shell: Piece, short: float) -> Piece:
    """The shell's piece with its hem moved up by `short` cm, along its neighbours."""
    code = f"L.{shell.code}"
    name = _NAMES.get(shell.code) or f"Lining of a {shell.name.lower()}"
    piece = replace(shell, code=code, name=name, lines=(), marks=())
    up = inset(piece.edge("hem").path, short, short)
    a, b = up.start_direction * _REACH, up.end_direction * _REACH
    line = Path.line(up.start - a, up.start) + up + Path.line(up.end, up.end + b)
    fault = (
        f"the lining of the skirt, {short:.1f} cm shorter, ends beside its seams: make "
        "it (shorter) less short"
    )
    first = meetings(line, piece.before("hem").path, fault)[0][0]
    last = meetings(line, piece.after("hem").path, fault)[-1][0]
    hem = Edge("hem", line.between(first, last), EdgeKind.FINISHED)
    return redraw(Sheet().put(piece), code, ["hem"], [hem]).piece(code)


_REACH = 3.0
"""The lining's hem is run on so far to meet the sides, cm."""


def _left_back(d: Drafting) -> None:
    """The left back: cut back along the mirror image of the vent's edges."""
    right = d.sheet.piece(f"L.{BACK}")
    over = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
    left = replace(right, code=LEFT_BACK, name="Left back lining")
    names = ["vent", "vent top"]
    vent, top = (right.edge(e).path.moved(over) for e in names)
    hem = right.edge("hem").path
    fault = "the lining's hem does not reach its vent: make the skirt (L) longer"
    foot = hem.at_length(meetings(hem, vent.run_on(1.0), fault)[0][0])
    vent = Path.line(foot, vent.end)
    edges = [right.edge(e).along(p) for e, p in zip(names, (vent, top), strict=True)]
    sheet = redraw(d.sheet.put(left), LEFT_BACK, names, edges)
    d.lay(
        Verb.REDRAW,
        sheet.put(replace(right, name="Right back lining")),
        LEFT_BACK,
        "left back of the lining",
        detail="the vent's edges laid to the other side of the centre back, where the "
        "shell's extension is folded in",
        lines=tuple(e.path for e in edges),
    )


def _seams(sheet: Sheet, short: float) -> list[Seam]:
    """As the shell is sewn; at the waist to the shell, beside a vent to its edges."""
    t = Chains(sheet)
    right, split = f"L.{BACK}", LEFT_BACK in sheet.pieces
    out: list[Seam] = []
    for s in sheet.seams:
        if s.kind is SeamKind.FACED or s.code == _SLIT_TOP:
            continue
        if split and s.code == _VENT_TOP:
            continue
        for back in (right, *((LEFT_BACK,) if split else ())):
            made = _as_shell(t, s, back)
            if made is not None and made not in out:
                out.append(made)
    out = [_both(s) if split and s.kind is SeamKind.TWIN else s for s in out]
    for code in (FRONT, BACK, GORE):
        for lining in (f"L.{code}", *((LEFT_BACK,) if code == BACK else ())):
            if lining in sheet.pieces:
                shell = waist_chain(t, code, outwards=True)
                out.append(_felled(t, lining, shell, "waist", ("centre", "side")))
    out += _beside_edge(t, short)
    if split:
        shell = t.chain((BACK, "vent top", True), (BACK, "vent", True))
        ends = ("centre back", "hem")
        out += [_felled(t, c, shell, "vent", ends) for c in (right, LEFT_BACK)]
    return list({s.code: s for s in out}.values())


def _beside_edge(t: Chains, short: float) -> list[Seam]:
    """The front of a wrap to the facing of its edge, and what of both lies beyond the
    centre on the shell's waist."""
    lining = f"L.{FRONT}"
    left, right = t.chain((lining, "join", False)), t.chain((FACING, "free", True))
    if not left:
        return []
    over = waist_chain(t, FRONT, outwards=True, over=True)
    felled = _felled(t, lining, over, "waist over", ("centre", "edge"))
    mine = (*felled.right, *t.chain((FACING, "waist over", False)))
    places = spaced((), t.length(left))
    return [
        Seam(
            "S145",
            "front lining to the facing of the edge",
            left,
            right,
            "waist",
            "hem",
            Ease.about(short, 0.1),
            notches=tuple(NotchPair(s, s) for s in places),
        ),
        replace(felled, right=mine, ease=Ease.about(0.0, 0.05)),
    ]


_VENT_TOP, _SLIT_TOP = "S36", "S160"


def _as_shell(t: Chains, s: Seam, back: str) -> Seam | None:
    """The lining's seam where the shell has this one, with one of its backs; None when
    it has none such."""
    of = {FRONT: f"L.{FRONT}", BACK: back, GORE: f"L.{GORE}"}
    below = tuple(r for r in s.left if r.piece not in BANDS.values())
    chains = [
        tuple(r for r in chain if r.piece not in (*BANDS.values(), HIP_PIECE))
        for chain in (s.left, s.right)
    ]
    if not all(chains) or any(r.piece not in of for c in chains for r in c):
        return None
    left, right = (tuple(r._replace(piece=of[r.piece]) for r in c) for c in chains)
    long = min(t.length(left), t.length(right)) - NOTCH_ROOM
    above = t.length(s.left) - t.length(below)  # a shaped band has no lining
    moved = (NotchPair(k.left - above, k.right - above, k.ticks) for k in s.notches)
    code = f"L.{s.code}"
    if back == LEFT_BACK and any(r.piece == BACK for r in s.runs()):
        code += " left"
    return replace(
        s,
        code=code,
        name=f"lining, {s.name}",
        left=left,
        right=right,
        notches=tuple(k for k in moved if NOTCH_ROOM < k.left < long),
    )


def _both(centre: Seam) -> Seam:
    """The centre back of two backs that differ."""
    chain = tuple(r._replace(piece=LEFT_BACK) for r in centre.left)
    first = tuple(r._replace(piece=f"L.{BACK}") for r in centre.left)
    return replace(
        centre,
        code="L.S35",
        left=first,
        right=chain,
        kind=SeamKind.PLAIN,
    )


def _felled(
    t: Chains, lining: str, shell: tuple[Run, ...], what: str, ends: tuple[str, str]
) -> Seam:
    """An edge of the lining laid on the shell's."""
    right = tuple(r._replace(piece=lining) for r in shell if r.piece != HIP_PIECE)
    plan = t.length(right) - t.length(shell)
    if what == "waist":
        plan = 0.0
    name = f"{t.sheet.piece(lining).name.lower()} at the {what}"
    return Seam(
        f"{lining}.{what}",
        name,
        shell,
        right,
        *ends,
        Ease.about(plan, 0.05),
        kind=SeamKind.LAPPED,
    )

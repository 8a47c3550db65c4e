"""The ease pleat at the centre back of a lining (transformations §6): the lining gives
where the back is stretched, and the shell does not."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector, direction, left_normal
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.linings.walked import lay_walked
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role, hem_of_skirt
from clothwright.features.skirts.folds import under
from clothwright.paper import (
    UNDER,
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations §6"

TOP_SEAM, FOOT_SEAM = "S150", "S151"
"""Codes of the pleat's edges, each laid on its own other half."""

_BACKS = ("L.BC", "L.B")
"""Codes of the piece of a lining that lies at the centre back."""

_TOP, _FOOT = f"{UNDER} top", f"{UNDER} foot"
"""The edges of the pleat, where it is caught above and below."""

_CAUGHT = 4.0
"""The pleat is stitched down for so much at its top and at the waist, cm (common
practice, no source)."""

_UNFIT = (
    "a pleat of the lining lies in a back that is cut on the fold; open the garment in "
    "front or at the side, or leave the pleat off"
)


def _foot_role(piece: Piece, edge: Edge) -> Role:
    """The waist; on a torso the hem, or what is felled to the shell's."""
    if not piece.has("hem"):
        return Role.WAIST
    if edge.kind is EdgeKind.SEAM:
        return Role.JOIN
    return hem_of_skirt(piece.edge("hem").path)


class EasePleat(Feature):
    """Ease pleat at the centre back of the lining."""

    kind: Literal["ease pleat"] = "ease pleat"
    title: ClassVar[str] = "Ease pleat of the lining"
    sentence: ClassVar[str] = (
        "The lining has an [ease pleat] at the centre back, {depth} deep."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, None, ("lining",), {_TOP: Role.JOIN, _FOOT: _foot_role})
        for code in _BACKS
    )
    seams: ClassVar[Mapping[str, str]] = {
        TOP_SEAM: "upper edge of an ease pleat of the lining, folded",
        FOOT_SEAM: "foot of an ease pleat of the lining at the waist, folded",
    }
    needs: ClassVar[dict[str, str]] = {
        "hung lining": 'an ease pleat is laid in a lining that hangs; add a "lining" '
        'with mode = "below the facing"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "centre back zip": "beside a zip the lining is felled to its tape, without a "
        "pleat between; open the top in front or at the side",
        "back opening": f"a back that opens has no fold for it: {_UNFIT}",
        "open back": f"an open back has no centre for it: {_UNFIT}",
    }

    depth: Annotated[
        Length | None,
        Number(
            "l_pleat",
            "lp",
            "depth of the ease pleat of the lining",
            _SRC,
            2.0,
            0.75,
            0.5,
            4.0,
            (1.0, 2.5),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LAID_OPEN, "the ease pleat of the lining", _draw),)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            "Lining: its back is cut on the fold of the ease pleat; the centre back "
            "is the line beside it."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        in_one = _back(sheet).has("hem")
        at_waist = (
            f"and for {fmt(_CAUGHT)} at the waist, half above it and half below"
            if in_one
            else f"and for {fmt(_CAUGHT)} up from the waist"
        )
        sewn = tuple(s.code for s in sheet.seams if s.code in (TOP_SEAM, FOOT_SEAM))
        yield Operation(
            Work.LINING,
            "Lay the ease pleat of the lining",
            (
                "Fold the back on the fold that it was cut on, right sides together, "
                "centre back on centre back; stitch that line for "
                f"{fmt(_CAUGHT)} from its top {at_waist}.",
                "Lay the pleat to one side and baste it across where it is sewn over; "
                "at the blades catch it by a few loose stitches.",
            ),
            seams=sewn,
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=2 * _CAUGHT,
            press="to one side",
            task=Task.PLEAT,
        )


def _back(sheet: Sheet) -> Piece:
    """The piece of the lining at the centre back."""
    return sheet.piece(next(c for c in _BACKS if c in sheet.pieces))


def _draw(d: Drafting) -> None:
    """Fold the paper on the centre back and again at the pleat's depth; cut join and
    waist through all of it."""
    n = d.n
    d.part = "lining"
    p = _back(d.sheet)
    centre = p.edge("cb")
    if centre.kind is not EdgeKind.FOLD:
        raise PaperError(f"{p.name.lower()}: its centre back is a seam, and {_UNFIT}")
    foot, top = p.before("cb"), p.after("cb")
    fold = centre.path  # up
    out = left_normal(direction(fold.start, fold.end)) * n.l_pleat
    inner = Path.line(fold.start + out, fold.end + out)
    above = under(top.path, fold, inner)[0]
    below = under(foot.path.reversed(), fold.reversed(), inner.reversed())[0]
    edges = [
        Edge(_FOOT, below, foot.kind),
        Edge("cb", Path.line(below.end, above.end), EdgeKind.FOLD),
        Edge(_TOP, above.reversed()),
    ]
    sheet = redraw(d.sheet, p.code, ["cb"], edges)
    drawn = sheet.piece(p.code)
    caught = [fold.at_length(fold.length - min(_CAUGHT, fold.length / 3))]
    waist = _waist(d)
    if waist is None:
        caught.append(fold.at_length(min(_CAUGHT, fold.length / 3)))
    else:
        caught += [waist + Vector(0.0, y) for y in (-_CAUGHT / 2, _CAUGHT / 2)]
    lines = [InnerLine(_CENTRE, fold)]
    lines += [
        InnerLine(f"stitched to here {i}", Path.line(at - out * 0.3, at + out * 0.3))
        for i, at in enumerate(caught, 1)
    ]
    sheet = sheet.put(drawn.with_lines(*lines))
    d.lay(
        Verb.REDRAW,
        sheet,
        p.code,
        "ease pleat of the lining, beyond the centre back",
        amounts=(("deep", "l_pleat"), ("cloth in all", 2 * n.l_pleat)),
        detail="the paper folded on the centre back and its upper and lower edges cut "
        "through all of it; the new edge is the fold of the cloth",
        lines=(fold, inner),
    )
    says = "the ease pleat folded and walked"
    lay_walked(d, d.sheet.sew(*_folded(d.sheet, p.code)), says, _FOLDED)


_FOLDED = (
    "laid shut, each of its edges lies on its other half, and centre back on centre "
    "back; what is sewn over it is as long as without it"
)

_CENTRE = "centre back of the lining"


def _waist(d: Drafting) -> Point | None:
    """The centre back at the waist, of a lining that runs on below it."""
    if not _back(d.sheet).has("hem"):
        return None
    return Point(0.0, d.n.yW)


def _folded(sheet: Sheet, code: str) -> Iterable[Seam]:
    """The edges of the pleat, each folded on its other half."""
    for seam, edge, name, ends in (
        (TOP_SEAM, _TOP, "ease pleat, above", ("fold", "centre back")),
        (FOOT_SEAM, _FOOT, "ease pleat, at its foot", ("centre back", "fold")),
    ):
        if sheet.edge(code, edge).kind is EdgeKind.SEAM:
            run = (Run(code, edge),)
            yield Seam(seam, name, run, run, *ends, kind=SeamKind.TWIN)

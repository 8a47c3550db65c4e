"""Inverted pleat at the centre of a straight skirt, stitched down to the hip
(transformations §10)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.grain import grained
from clothwright.features.operations import Operation, Work
from clothwright.features.roles import Role, skirt_hem
from clothwright.features.skirts.folds import ARROW_BELOW, fold_lines, pleat_seam, under
from clothwright.features.skirts.pleated_skirt import pleat_operations
from clothwright.features.skirts.pleated_skirt_drawing import SEAM
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    UNDER,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §10"

BACKING = "PU"
"""Code of a backing cut by itself."""

CENTRE = "backing"
"""The fold in the middle of what lies behind an inverted pleat."""

_ABOVE_HEM = 15.0
"""The stitching ends at least so far above the hem, cm (our own: less swings no
more)."""

_OVER_DART = 1.5
"""A pleat may lie so far over the first dart, cm (our own)."""

CENTRE_PLEAT = RuleTable("inverted pleat at the centre")


@CENTRE_PLEAT.rule(
    "cp down",
    "pleat stitched down, from the waist",
    source=_SRC,
    key="cp_down",
    formula="WH",
    low=0.0,
    high=80.0,
)
def _down(WH: float) -> float:
    return WH


@CENTRE_PLEAT.rule(
    "cp cloth",
    "cloth that the pleat takes",
    source=_SRC,
    key="cp_cloth",
    formula="4u",
)
def _cloth(cu: float) -> float:
    return 4 * cu


class Where(Enum):
    """At which centre it lies."""

    FRONT = "centre front"
    BACK = "centre back"


class Backing(Enum):
    """What lies behind it."""

    IN_ONE = "cut in one"
    SEPARATE = "a piece of its own"
    """Sewn in with two seams; saves width of cloth."""


class CentrePleat(Feature):
    """Inverted pleat at the centre front or back."""

    kind: Literal["centre pleat"] = "centre pleat"
    title: ClassVar[str] = "Inverted pleat at the centre"
    sentence: ClassVar[str] = (
        "An [inverted pleat] lies at the {where}, {depth} deep, its backing {backing}."
    )
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            BACKING,
            Place.PLEAT,
            ("skirt back", "skirt front"),
            edges={
                "hem": skirt_hem,
                "side": Role.PEPLUM_SIDE,
                "panel": Role.PEPLUM_SIDE,
            },
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S54": "pleats of a skirt, stitched down",
        "S55": "backing of a pleat that is a piece of its own",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"pleats"})
    needs: ClassVar[dict[str, str]] = {
        "fitted skirt": "an inverted pleat at the centre is laid in a straight skirt"
    }
    clashes: ClassVar[dict[str, str]] = {
        "pleats": "a skirt has one pleat at its centre; leave one off",
        "hem finish": "the hem of a pleat is turned up; leave the flounce or the "
        "godets off",
    }

    where: Where = Where.FRONT
    depth: Annotated[
        Length | None,
        Number("cu", "cu", "depth of the pleat", _SRC, 6.0, 2.5, 3.0, 15.0, (4.0, 9.0)),
    ] = None
    stitched: Annotated[
        Length | None,
        Number(
            "cp_down",
            "cp down",
            "pleat stitched down, from the waist",
            _SRC,
            low=0.0,
            high=80.0,
        ),
    ] = None
    backing: Backing = Backing.IN_ONE

    def forbids(self) -> Mapping[str, str]:
        if self.where is Where.FRONT:
            return self.clashes
        return {
            **self.clashes,
            "back opening": "a pleat at the centre back leaves no seam for a zip: "
            "open the skirt in the left side",
            "vent": "a pleat at the centre back takes the place of the vent",
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (CENTRE_PLEAT,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LAID_OPEN, "the centre pleat", self._draw),)

    def _draw(self, d: Drafting) -> None:
        if d.n.cp_down > d.n.L - _ABOVE_HEM:
            raise PaperError(
                f"the pleat (cp down) is stitched to less than {_ABOVE_HEM:g} cm above "
                "the hem: end the stitching higher, or make the skirt longer"
            )
        code = FRONT if self.where is Where.FRONT else BACK
        _open(d, code, separate=self.backing is Backing.SEPARATE)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            f"Inverted pleat: stitch the {self.where.value} from the waist down for "
            f"{fmt(n.cp_down)}, spread the pleat evenly behind it, and baste it across "
            f"the waist; it takes {fmt(n.cp_cloth)} of cloth."
        )
        if any(c.startswith("L.S") for c in sheet.pieces):
            yield (
                "The lining has no pleat: leave both its sides open at the hem for a "
                "step."
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        laid = "Both folds to the centre"
        if BACKING in sheet.pieces:
            laid = (
                "The backing's seams lie in the inner folds; both folds to the centre"
            )
        return pleat_operations(
            sheet,
            (
                f"Stitch the {self.where.value} for {fmt(n.cp_down)} from the waist, "
                "along the fold lines laid on each other, and secure the end.",
                f"{laid}, basted across the waist and down to the hem.",
            ),
            n.cp_down,
            1.0,
            Work.PANEL,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        code = FRONT if self.where is Where.FRONT else BACK
        piece = sheet.piece(code)
        free = piece.edge(_top(piece)).length
        if n.cu > free + _OVER_DART:
            yield Finding(
                "CP1",
                Severity.WARN,
                f"The pleat is {n.cu:.1f} cm deep and the first dart {free:.1f} cm "
                "from the centre: they lie over each other.",
                "cu",
                "Make the pleat (cu) less deep.",
                {"cu": n.cu, "free": free},
            )


def _top(piece: Piece) -> str:
    """What the pleat hangs from at the centre: the waist, or the seam of a yoke."""
    return "yoke" if piece.has("yoke") else "waist"


def _open(d: Drafting, code: str, *, separate: bool) -> None:
    """Lay the pleat in beyond the centre: the paper folded, waist and hem drawn on."""
    n = d.n
    front = code == FRONT
    d.part = "skirt front" if front else "skirt back"
    p = d.sheet.piece(code)
    edge = p.edge("cf" if front else "cb")
    fold = edge.path if front else edge.path.reversed()  # from the waist down
    out = Point(n.cu if front else -n.cu, 0.0)
    inner = Path.line(fold.start + out, fold.end + out)
    waist, hem = p.edge(_top(p)).path, p.edge("hem").path
    top = under(waist.reversed() if front else waist, fold.reversed(), inner)
    foot = under(hem if front else hem.reversed(), fold, inner)
    middle = Path.line(top[1].end, foot[1].end)
    names = [f"{UNDER} 1", f"{UNDER} 1 over"]
    outer = foot[0].reversed() if front else foot[0]
    whole = (foot[0] + foot[1]).reversed() if front else foot[0] + foot[1]
    long_hem, short_hem = (
        (part + hem) if front else (hem + part) for part in (whole, outer)
    )
    centre = Path.line(top[0].end, foot[0].end) if separate else middle
    edges = [
        Edge(names[0], top[0]),
        *(() if separate else (Edge(names[1], top[1]),)),
        Edge("pleat inside" if separate else CENTRE, centre, _kind(separate)),
        Edge("hem", short_hem if separate else long_hem, EdgeKind.FINISHED),
    ]
    old = [edge.name, "hem"]
    if not front:
        edges = [e.along(e.path.reversed()) if e.name != "hem" else e for e in edges]
        edges.reverse()
        old.reverse()
    sheet = redraw(d.sheet, code, old, edges)
    level = max(n.cp_down, n.WH) + ARROW_BELOW
    placed = None if separate else middle
    lines = fold_lines("inverted pleat", fold, placed, level)
    if not separate:  # the centre of the backing is laid behind the fold
        lines = tuple(k for k in lines if "to here" not in k.name)
    stop = Point(fold.start.x, fold.start.y + n.cp_down)
    end = InnerLine("stitched to here", Path.line(stop - out * 0.3, stop + out * 0.3))
    opened = sheet.piece(code).with_lines(*lines, *((end,) if n.cp_down > 0 else ()))
    sheet = sheet.put(grained(opened))
    other = Run(code, names[1], backward=front)
    if separate:
        sheet = sheet.put(_backing(top[1], foot[1], front=front))
        sheet = sheet.sew(_inside(sheet, code, front=front))
        other = Run(BACKING, names[1], backward=front)
    sheet = sheet.sew(
        pleat_seam(f"{SEAM}1", "inverted pleat", Run(code, names[0], not front), other)
    )
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{code}.{CENTRE}",
        f"inverted pleat laid in at the centre {'front' if front else 'back'}",
        amounts=(("deep", "cu"), ("cloth in all", "cp_cloth")),
        detail="the old centre is the fold; the paper folded there and again at its "
        "depth, and waist and hem cut through all of it",
        lines=(fold, inner, middle),
    )


def _kind(separate: bool) -> EdgeKind:
    return EdgeKind.SEAM if separate else EdgeKind.FOLD


def _backing(top: Path, foot: Path, *, front: bool) -> Piece:
    """Half of a backing cut by itself, from its seam to its centre, which is on the
    fold."""
    seam, centre = Path.line(top.start, foot.start), Path.line(top.end, foot.end)
    over, inside = f"{UNDER} 1 over", "pleat backing"
    edges = (
        (
            Edge(over, top),
            Edge(CENTRE, centre, EdgeKind.FOLD),
            Edge("hem", foot.reversed(), EdgeKind.FINISHED),
            Edge(inside, seam.reversed()),
        )
        if front
        else (
            Edge(over, top.reversed()),
            Edge(inside, seam),
            Edge("hem", foot, EdgeKind.FINISHED),
            Edge(CENTRE, centre.reversed(), EdgeKind.FOLD),
        )
    )
    return grained(Piece(BACKING, "Backing of the pleat", edges))


def _inside(sheet: Sheet, code: str, *, front: bool) -> Seam:
    """The seam in the inner fold, from the waist to the hem."""
    left = (Run(code, "pleat inside", backward=not front),)
    right = (Run(BACKING, "pleat backing", backward=front),)
    at = 0.45 * sheet.chain_length(left)
    return Seam(
        "S55",
        "backing of the pleat",
        left,
        right,
        "waist",
        "hem",
        Ease.about(0.0, 0.1),
        notches=(NotchPair(at, at),),
    )

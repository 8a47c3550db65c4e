"""Pockets of trousers: slanting over the hip, or in the side seam (transformations
§9)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import FRONT
from clothwright.curves import Cubic, Path, Point, Vector
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.operations import Operation
from clothwright.features.trouser_sewing import pocket_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    On,
    PaperError,
    Piece,
    Sheet,
    Verb,
    cut,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §9"

HIP_PIECE, BAG = "TK", "TP"
"""Codes of the pieces: what shows in a slanting pocket, with its half of the bag; the
bag."""

_BESIDE_DART = 0.5
"""The bag ends so far beside the nearest dart, cm (our own)."""

_HAND = 2.5
"""The top of the bag is at least so much wider than what is cut away, cm (our own)."""

_ABOVE_HIP = 1.0
"""A slanting pocket ends so far above the hip line, cm (our own)."""

_BELOW_MOUTH = 4.0
"""The bag reaches so far below a mouth in the side seam, cm (common practice)."""


class Shape(Enum):
    """Where the hand goes in."""

    SLANT = "slanting"
    """From the waist to the side."""

    SEAM = "in the side seam"


POCKETS = RuleTable("pockets of trousers")


@POCKETS.rule(
    "pz",
    "end of the pocket down the side, from the waist",
    source=_SRC,
    key="pk_end",
    formula="17 cm, but ending 1 cm above the hip",
    low=10.0,
    high=26.0,
)
def _end(BRe: float, yh_T: float) -> float:
    return min(17.0, BRe - yh_T - _ABOVE_HIP)


class Pockets(Feature):
    """Two pockets at the sides of trousers."""

    kind: Literal["trouser pockets"] = "trouser pockets"
    title: ClassVar[str] = "Pockets of trousers"
    sentence: ClassVar[str] = "The [pockets] are {shape}, their bags {bag} deep."
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"pockets"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "these pockets are for trousers"
    }
    clashes: ClassVar[dict[str, str]] = {
        "side zip": "a zip in the left side leaves no pocket there; close with a fly"
    }

    shape: Shape = Shape.SLANT
    across: Annotated[
        Length | None,
        Number(
            "pk_top",
            "pt",
            "slanting pocket on the waist, from the side",
            _SRC,
            6.0,
            2.375,
            2.5,
            10.0,
            (5.0, 7.0),
        ),
    ] = None
    end: Annotated[
        Length | None,
        Number(
            "pk_end",
            "pz",
            "end of the pocket down the side, from the waist",
            _SRC,
            low=10.0,
            high=26.0,
            usual=(15.0, 18.0),
        ),
    ] = None
    begin: Annotated[
        Length | None,
        Number(
            "pk_begin",
            "pb",
            "mouth in the side seam, below the waist",
            _SRC,
            7.0,
            2.75,
            3.0,
            12.0,
            (6.0, 8.0),
        ),
    ] = None
    mouth: Annotated[
        Length | None,
        Number(
            "pk_mouth",
            "pm",
            "length of a mouth in the side seam",
            _SRC,
            16.0,
            6.25,
            12.0,
            20.0,
            (15.0, 17.0),
        ),
    ] = None
    bag: Annotated[
        Length | None,
        Number(
            "pk_deep",
            "pd",
            "depth of the pocket bag, from the waist",
            _SRC,
            28.0,
            11.0,
            20.0,
            40.0,
            (25.0, 30.0),
        ),
    ] = None
    bag_width: Annotated[
        Length | None,
        Number(
            "pk_wide",
            "pw",
            "width of the pocket bag",
            _SRC,
            15.5,
            6.0,
            11.0,
            22.0,
            (15.0, 18.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (POCKETS,)

    def stages(self) -> tuple[Stage, ...]:
        draw = _slant if self.shape is Shape.SLANT else _in_seam
        return (Stage(Rank.CLOSURE, "the pockets", draw),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if HIP_PIECE in sheet.pieces:
            return {BAG: Cuts("2 (1 pair)", 2, ("lining",))}
        return {BAG: Cuts("4 (2 pairs)", 4, ("lining",))}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,  # noqa: ARG002
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is Shape.SLANT:
            yield (
                "Pockets: tape the slanting edge, face it with the bag, lay the hip "
                "piece behind it from notch to notch, and sew the bag before the sides."
            )
        else:
            yield (
                f"Pockets: sew the bags to both side allowances, and the sides above "
                f"and below the mouth of {fmt(n.pk_mouth)} (notches)."
            )

    def operations(
        self,
        n: Numbers,  # noqa: ARG002
        sheet: Sheet,
        fmt: Callable[[float], str],  # noqa: ARG002
    ) -> Iterable[Operation]:
        return pocket_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:  # noqa: ARG002
        mouth = n.pk_begin + n.pk_mouth
        lowest = n.pk_end if self.shape is Shape.SLANT else mouth
        if n.pk_deep < lowest + _BELOW_MOUTH - 0.05:
            yield Finding(
                "P1",
                Severity.WARN,
                f"The pocket bag is {n.pk_deep:.1f} cm deep and the mouth ends "
                f"{lowest:.1f} cm below the waist: things fall out of it.",
                "pd",
                "Make the bag (pd) deeper.",
                {"pd": n.pk_deep, "mouth": lowest},
            )


def _slant(d: Drafting) -> None:
    n = d.n
    d.part = "pockets"
    front = d.sheet.piece(FRONT)
    side, waist = front.edge("side").path, _beside_side(front)
    top = _top(d, waist.path)
    if n.pk_top > top - _HAND:
        raise PaperError(
            f"a slanting pocket {n.pk_top:.1f} cm from the side leaves no room for a "
            f"hand before the dart: make pt {max(0.0, top - _HAND):.1f} cm or less, or "
            'choose shape = "in the side seam"'
        )
    up = side.length - n.pk_end
    a, b = waist.path.at_length(n.pk_top), side.at_length(up)
    d.found("Pa", a, "pocket at the waist", amounts=(("from Wfs", "pk_top"),))
    d.found("Pz", b, "pocket at the side", amounts=(("down from Wfs", "pk_end"),))
    line = Path.line(b, a)
    d.lay(
        Verb.CUT,
        cut(
            d.sheet,
            FRONT,
            line,
            On("side", up),
            On(waist.name, n.pk_top),
            edge="pocket",
            seam="S46",
            seam_name="pocket mouth",
            into=((HIP_PIECE, "Hip piece"), (FRONT, front.name)),
        ),
        f"{FRONT}.pocket",
        "corner of the front, along the mouth of the pocket",
        frm=("Pa", "Pz"),
        lines=(line,),
    )
    corner, rest = d.sheet.piece(HIP_PIECE), d.sheet.piece(FRONT)
    below = rest.edge("side").path
    under = waist.path.between(n.pk_top, top)
    beside = below.between(side.length - n.pk_deep, below.length)
    bag = _bag(d, under.end, beside.start)
    done = EdgeKind.FINISHED
    shared = (Edge("waist under", under, done), Edge("bag", bag))
    hip_piece = Piece(
        HIP_PIECE,
        "Pocket back",
        (
            Edge("side under", beside, done),
            corner.edge("side"),
            Edge("waist side", corner.edge(waist.name).path),
            *shared,
        ),
    )
    bag_piece = Piece(
        BAG,
        "Pocket bag",
        (Edge("side under", beside, done), rest.edge("pocket"), *shared),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.in_place_of(HIP_PIECE, put=(hip_piece,)).put(bag_piece).unsew("S46"),
        BAG,
        "pocket back and pocket bag from the front",
        amounts=(("deep", "pk_deep"), ("wide", "pk_wide")),
        detail="the back with the corner that was cut off, the bag without it",
        lines=(bag,),
    )


def _in_seam(d: Drafting) -> None:
    n = d.n
    d.part = "pockets"
    front = d.sheet.piece(FRONT)
    side, waist = front.edge("side").path, _beside_side(front).path
    top = min(_top(d, waist), n.pk_wide)
    for name, key, down in (
        ("Pa", "beginning", n.pk_begin),
        ("Pz", "end", n.pk_begin + n.pk_mouth),
    ):
        d.found(
            name,
            side.at_length(side.length - down),
            f"{key} of the pocket's mouth on the side",
            amounts=(("down from Wfs", down),),
        )
    beside = side.between(side.length - n.pk_deep, side.length)
    under = waist.between(0.0, top)
    bag = _bag(d, under.end, beside.start)
    done = EdgeKind.FINISHED
    piece = Piece(
        BAG,
        "Pocket bag",
        (
            Edge("side under", beside, done),
            Edge("waist under", under, done),
            Edge("bag", bag),
        ),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        BAG,
        "pocket bag from the front",
        amounts=(("deep", "pk_deep"), ("wide", "pk_wide")),
        detail="along waist and side",
        lines=(bag,),
    )


def _beside_side(front: Piece) -> Edge:
    """The stretch of the front's waist beside the side."""
    return front.after("side")


def _top(d: Drafting, waist: Path) -> float:
    """Width of the bag along the waist: beside the dart, at most its whole width."""
    darted = d.n.nf_T > 0
    return min(d.n.pk_wide, waist.length - (_BESIDE_DART if darted else 2.0))


def _bag(d: Drafting, top: Point, foot: Point) -> Path:
    """Inner and lower edge of the bag, from the waist round to the side."""
    wide = max(top.x, foot.x + d.n.pk_wide)
    low = Point(wide, foot.y - 7.0)
    mid = (top.y + low.y) / 2
    return Path(
        (
            Cubic(top, Point(top.x, mid), Point(wide, mid), low),
            Cubic(
                low,
                low + Vector(0.0, 6.0),
                foot + Vector(0.6 * (wide - foot.x), 2.0),
                foot,
            ),
        )
    )

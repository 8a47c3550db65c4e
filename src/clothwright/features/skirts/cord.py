"""A drawstring in a casing, out through two openings in front (transformations 8): what
one beside an elastic and one that draws alone have in common."""

from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar

from clothwright.blocks import skirt, trousers
from clothwright.curves import Path, Point, Vector, direction, dot, turned
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Hazard, Operation, Stitch, Task, Work
from clothwright.features.skirts.elastic_casing import HIP_ROOM, SRC, fold_of
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_FRONTS = (skirt.FRONT, trousers.FRONT)
_CENTRES = ("crotch", "cf")
"""Edges that begin at the centre front, under another name than a fold's."""

_THICK = 0.3
"""An opening is so much longer than the cord is wide, cm (7: a buttonhole is as long
as its button is wide and thick)."""

KEPT = 0.3
"""Cloth of the casing above and below an opening, cm (our own)."""

_HELD = 20.0
"""Both ends together when the waist is opened to pass the hip, cm (common practice, no
source: a hand holds each)."""

_PATCH = 3.0
"""Width of the interlining behind each opening, cm (common practice, no source)."""

DRAWSTRING = RuleTable("drawstring")
_rule = DRAWSTRING.rule


@_rule(
    "drawstring",
    "length of the drawstring",
    source=SRC,
    key="drawstring",
    formula="W + dse, and at least 20 cm more than the H + 2 cm that it opens to",
    low=60.0,
    high=300.0,
)
def _cord(W: float, H: float, ds_ends: float) -> float:
    return max(W + ds_ends, H + HIP_ROOM + _HELD)


@_rule(
    "ds hole",
    "opening for the drawstring",
    source="transformations §7",
    key="ds_hole",
    formula="width of the cord and 0.3 cm",
)
def _hole(ds_cord: float) -> float:
    return ds_cord + _THICK


class Holes(Enum):
    """What the cord comes out through."""

    EYELETS = "eyelets"
    BUTTONHOLES = "buttonholes"


class Corded(Feature):
    """Base of the waists that a cord is drawn through."""

    shows: ClassVar[Shown] = {
        mark: tuple(f"{code}.waist" for code in _FRONTS)
        for mark in ("dsw", "dsa", "ds hole")
    }

    beside: ClassVar[str] = ""
    """What it runs in front of: " in front of the elastic"."""

    deeper: ClassVar[str]
    """How else the casing gets room for it."""

    through: Holes = Holes.EYELETS
    cord: Annotated[
        Length | None,
        Number(
            "ds_cord",
            "dsw",
            "width of the drawstring",
            "common practice, no source",
            0.6,
            0.25,
            0.2,
            3.0,
            (0.4, 1.5),
        ),
    ] = None
    apart: Annotated[
        Length | None,
        Number(
            "ds_apart",
            "dsa",
            "from one opening for the drawstring to the other",
            "common practice, no source",
            5.0,
            2.0,
            2.0,
            14.0,
            (3.0, 8.0),
        ),
    ] = None
    ends: Annotated[
        Length | None,
        Number(
            "ds_ends",
            "dse",
            "drawstring longer than the waist",
            SRC,
            55.0,
            22.0,
            20.0,
            100.0,
            (50.0, 60.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (DRAWSTRING,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "openings for the drawstring", self._mark),)

    def _mark(self, d: Drafting) -> None:
        """An opening on each half of the front, half way down the casing."""
        code = next(c for c in _FRONTS if c in d.sheet.pieces)
        front = d.sheet.piece(code)
        at = _place(front, d.n)
        new = front.with_marks(Mark("opening for the drawstring", at, MarkKind.DRILL))
        if self.through is Holes.BUTTONHOLES:
            half = Vector(0.0, d.n.ds_hole / 2)
            hole = Path.line(at - half, at + half)
            new = new.with_lines(InnerLine("buttonhole for the drawstring", hole))
        d.part = front.name.lower()
        d.lay(
            Verb.SEW,
            d.sheet.put(new),
            code,
            f"{self.through.value} for the drawstring",
            amounts=(
                ("{} from one to the other, on the flat cloth", "ds_apart"),
                ("below the waist line, which is the fold", d.n.casing / 2),
            ),
            detail="half way down the casing, on both halves of the front",
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        hole = (
            f"Buttonholes for the drawstring: {fmt(n.ds_hole)} long, upright on their "
            "crosses, in the front alone, not in what is turned down."
        )
        eyelet = (
            "Eyelets for the drawstring: on the crosses, in the front alone, not in "
            "what is turned down."
        )
        yield hole if self.through is Holes.BUTTONHOLES else eyelet

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.DRAWSTRING,
            1,
            "to tie the waist with",
            length=n.drawstring,
            size=n.ds_cord,
        )
        if self.through is Holes.EYELETS:
            yield Notion(Article.EYELET, 2, "wide enough for the drawstring")
        yield Notion(
            Article.STRIP,
            2,
            f"behind the {self.through.value}",
            length=n.casing,
            size=_PATCH,
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.FUSE,
            "Interline behind the openings for the drawstring",
            (f"A patch {fmt(_PATCH)} by {fmt(n.casing)} on the wrong side of each.",),
            hazards=(Hazard.IRON,),
        )
        sewn = self.through is Holes.BUTTONHOLES
        how = f"Each {fmt(n.ds_hole)} long, upright, " if sewn else "On the crosses, "
        yield Operation(
            Work.ON_EDGE,
            f"{'Work' if sewn else 'Set'} two {self.through.value} in the front",
            (
                f"{how}through cloth and interlining, before the casing is turned "
                "down; try one on a scrap with the cord.",
            ),
            stitch=Stitch.ZIGZAG if sewn else Stitch.HAND,
            length=4 * n.ds_hole if sewn else None,
            task=Task.BUTTONHOLE if sewn else Task.BUTTON,
            count=2.0,
            hazards=(Hazard.BLADE,) if sewn else (),
        )
        yield Operation(
            Work.FASTEN,
            "Draw the drawstring in",
            (
                f"{fmt(n.drawstring)} of cord, in at one opening and "
                f"round{self.beside} to the other; even its ends, knot each, and "
                "stitch through casing and cord at the centre back, so that it is not "
                "pulled out.",
            ),
            stitch=Stitch.LOCK,
            length=n.casing,
            task=Task.BY_HAND,
            hazards=(Hazard.CORD,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        most = n.casing - 2 * KEPT
        if n.ds_hole > most + 1e-9:
            yield Finding(
                "DS1",
                Severity.REFUSE,
                f"The opening for the drawstring is {n.ds_hole:.1f} cm long, and the "
                f"casing, {n.casing:.1f} cm deep, has room for {max(0.0, most):.1f} "
                "cm.",
                "dsw",
                f"Make the cord (dsw) {max(0.0, most - _THICK):.1f} cm wide or less, "
                f"{self.deeper}.",
                {"hole": n.ds_hole, "casing": n.casing},
            )


def _place(front: Piece, n: Numbers) -> Point:
    """Half of what is between the openings along the fold from the centre front, and
    half the casing below it."""
    fold = fold_of(front)
    after = front.after("waist")
    if after.kind is EdgeKind.FOLD or after.name in _CENTRES:
        fold = fold.reversed()
    on = fold.at_length(n.ds_apart / 2)
    down = turned(direction(fold.start, fold.end), 90)
    if dot(down, Vector(0.0, 1.0)) < 0:
        down = down * -1.0
    return on + down * (n.casing / 2)

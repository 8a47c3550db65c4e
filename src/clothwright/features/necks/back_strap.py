"""A strap across a low back, at the level of the blades: it keeps the shoulders on
(transformations 2, deep back).

One end is caught in the edge of the neck, the other hooks to it, so that the back may
open between them.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import BACK_STRAP, Chains
from clothwright.features.necks.strap_seams import back_strap_seams
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.paper import (
    Drafting,
    InnerLine,
    Mark,
    PaperError,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 2"

_LEAST = 4.0
"""A strap shorter than this holds nothing, cm (our own choice)."""

_UNDER = 2.5
"""The hooked end runs so far under the edge, cm (transformations 7)."""

STRAP = RuleTable("back strap")


@STRAP.rule(
    "y(strap)",
    "level of the back strap below the nape",
    key="y_strap",
    source=_SRC,
    formula="half way to the bust line, where the blades are fullest; at most 55 in "
    "100 of the way down the back neck",
    low=2.0,
    high=30.0,
)
def _level(yB: float, Db: float, nr: float) -> float:
    return min(yB / 2, 0.55 * (Db - nr))


class BackStrap(Feature):
    """Strap across a low back neck."""

    kind: Literal["back strap"] = "back strap"
    title: ClassVar[str] = "Back strap"
    sentence: ClassVar[str] = (
        "A [strap] {width} wide crosses the back, {level} below the nape."
    )
    shows: ClassVar[Shown] = {
        "y(strap)": ("BC.neck", "B.neck"),
        "strap b": ("BK.strap end",),
    }
    pieces: ClassVar[tuple[About, ...]] = (About(BACK_STRAP, Place.STRAP),)
    seams: ClassVar[Mapping[str, str]] = {
        "S67": "strap across the back, its end in the neck's edge",
        "S68": "strap across the back, bagged out",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"back strap"})
    needs: ClassVar[dict[str, str]] = {
        "back neck": "a back strap crosses a low back neckline; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "back strap": "an order has one back strap",
        "open back": "the slanted edges of an open back are held by its loops",
        "strapless": "a strapless bodice has no neck for a strap to cross",
        "halter": "the back of a halter is too low for a strap at the blades",
        "lining": "a strap is not yet caught in the edge of a lining; face the neck",
    }

    width: Annotated[
        Length | None,
        Number(
            "strap_b", "strap b", "width of the back strap", _SRC, 2.5, 1.0, 1.0, 6.0
        ),
    ] = None
    level: Annotated[
        Length | None,
        Number(
            "y_strap",
            "y(strap)",
            "level of the back strap below the nape",
            _SRC,
            low=2.0,
            high=30.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (STRAP,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the back strap", _draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return back_strap_seams(t, n)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {BACK_STRAP: Cuts("2 (1 pair)", 2)}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.HOOK, 2, "for the back strap")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.ON_EDGE,
            "Make the back strap and baste it to the right edge of the neck",
            (
                "Right sides together round its long edges and one end; turn, press.",
                f"Its middle lies at the mark, {fmt(n.y_strap)} below the nape; it is "
                "caught in when the neck is faced.",
            ),
            seams=("S67", "S68"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.LAPPED,
        )
        yield Operation(
            Work.FASTEN,
            "Sew the hooks to the back strap",
            ("Two hooks on its free end, their eyes inside the left edge.",),
            stitch=Stitch.HAND,
            task=Task.HOOK,
            count=2.0,
            hazards=(Hazard.SMALL_PART,),
        )


def _draw(d: Drafting) -> None:
    """Mark the strap on the neck's edge; draw it from edge to edge, and under."""
    n = d.n
    d.part = "back"
    code = "BC" if "BC" in d.sheet.pieces else "B"
    neck = d.sheet.edge(code, "neck").path
    hits = neck.meets(Path.line(Point(-50.0, n.y_strap), Point(100.0, n.y_strap)))
    at = neck.at_length(hits[-1][0]) if hits else None
    if at is None or at.x < _LEAST:
        where = "at that level" if at is None else "there"
        raise PaperError(
            f"the back strap {n.y_strap:.1f} cm below the nape finds no edges to hold "
            f"{where}: make the back neck deeper, or the strap, y(strap), higher"
        )
    middle = d.found(
        "Ks",
        at,
        "middle of the back strap on the neck's edge",
        amounts=(("down from the nape", "y_strap"),),
    )
    back = d.sheet.piece(code).with_marks(Mark("back strap", middle))
    w, long = n.strap_b, 2 * middle.x
    a, b, c, e = (
        Point(0.0, -_UNDER),
        Point(w, -_UNDER),
        Point(w, long),
        Point(0.0, long),
    )
    strap = Piece(
        BACK_STRAP,
        "Back strap",
        (
            straight("nape", a, b),
            straight("band lower", b, c),
            straight("strap end", c, e),
            straight("band upper", e, a),
        ),
        lines=(InnerLine("edge of the neck", Path.line(Point(0, 0), Point(w, 0))),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(back, strap),
        BACK_STRAP,
        "back strap, from edge to edge and under it to hook",
        amounts=(("long between the edges", long), ("wide", "strap_b")),
        frm=("Ks",),
    )

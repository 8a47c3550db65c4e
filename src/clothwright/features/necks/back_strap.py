"""A strap across a low back, at the level of the blades: it keeps the shoulders on
(transformations 2, deep back).

One end is caught in the edge of the neck and the other hooks to it, so that the back
may open between them; or both are caught, of cloth or of elastic, and what lies above
must pass the head.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import (
    Cuts,
    Feature,
    Number,
    Rank,
    Shown,
    Stage,
    useless,
)
from clothwright.features.chains import BACK_STRAP, Chains
from clothwright.features.necks.neck_findings import opens_in_front
from clothwright.features.necks.over_head import OVER_HEAD
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
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Mark,
    PaperError,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Given, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 2"

_LEAST = 4.0
"""A strap shorter than this holds nothing, cm (our own choice)."""

_UNDER = 2.5
"""The hooked end runs so far under the edge, cm (transformations 7)."""

_CAUGHT = 1.5
"""So much of each end of an elastic lies inside the edge, cm (our own choice: both
allowances and a second row)."""

_STRETCHED = 1.4
"""What an elastic gives when the head goes through, of its own length (common practice,
no source)."""

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


class Held(Enum):
    """How a strap's ends are held, and of what it is."""

    HOOKED = "hooked"
    """Of cloth; one end is caught, the other hooks."""

    SEWN = "sewn in"
    """Of cloth, both ends caught."""

    ELASTIC = "of elastic"
    """Both ends caught; it gives when the back bends."""


class BackStrap(Feature):
    """Strap across a low back neck."""

    kind: Literal["back strap"] = "back strap"
    title: ClassVar[str] = "Back strap"
    sentence: ClassVar[str] = (
        "A [strap] {width} wide, {held}, crosses the back, {level} below the nape."
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
    }

    held: Held = Held.HOOKED
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
    shorter: Annotated[
        Ratio | None,
        Number(
            "strap_less",
            "strap less",
            "elastic of the back strap shorter than its way, per cent",
            "common practice, no source",
            10.0,
            None,
            0.0,
            25.0,
            (5.0, 15.0),
            Kind.RATIO,
        ),
    ] = None
    """Of elastic only."""

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its numbers; only an elastic is shorter than its way."""
        for it in super().given(unit):
            if it.key != "strap_less" or self.held is Held.ELASTIC:
                yield it

    def tables(self) -> tuple[RuleTable, ...]:
        return (STRAP,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the back strap", self._draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return back_strap_seams(t, n) if BACK_STRAP in t.sheet.pieces else ()

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if self.held is Held.SEWN:
            return {BACK_STRAP: Cuts("2 on fold", 2)}
        return {BACK_STRAP: Cuts("2 (1 pair)", 2)}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if self.held is Held.HOOKED:
            yield Notion(Article.HOOK, 2, "for the back strap")
        if self.held is Held.ELASTIC:
            long = _elastic(n, sheet) + 2 * _CAUGHT
            where = "across the back"
            yield Notion(Article.ELASTIC, 1, where, length=long, size=n.strap_b)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        middle = (
            f"Its middle lies at the mark, {fmt(n.y_strap)} below the nape; it is "
            "caught in when the neck is faced."
        )
        if self.held is Held.ELASTIC:
            yield Operation(
                Work.ON_EDGE,
                "Baste the elastic across the back to both edges of the neck",
                (
                    f"From edge to edge {fmt(_elastic(n, sheet))} of it, and "
                    f"{fmt(_CAUGHT)} more at each end.",
                    middle,
                ),
                stitch=Stitch.LOCK,
                seam_type=SeamType.LAPPED,
            )
            return
        sewn = self.held is Held.SEWN
        yield Operation(
            Work.ON_EDGE,
            "Make the back strap and baste it to "
            + ("both edges of the neck" if sewn else "the right edge of the neck"),
            (
                "Right sides together along its long edges; turn, press."
                if sewn
                else "Right sides together round its long edges and one end; turn, "
                "press.",
                middle,
            ),
            seams=("S67", "S68"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.LAPPED,
        )
        if not sewn:
            yield Operation(
                Work.FASTEN,
                "Sew the hooks to the back strap",
                ("Two hooks on its free end, their eyes inside the left edge.",),
                stitch=Stitch.HAND,
                task=Task.HOOK,
                count=2.0,
                hazards=(Hazard.SMALL_PART,),
            )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.shorter is not None and self.held is not Held.ELASTIC:
            yield from useless(
                self,
                ("shorter",),
                f"A back strap that is {self.held.value}",
                'Leave it out, or set held = "of elastic".',
            )
        if self.held is Held.HOOKED or opens_in_front(sheet):
            return
        at, back = sheet.points["Ks"], sheet.lines["neck back"]
        strap = 2 * at.x
        if self.held is Held.ELASTIC:
            strap = _elastic(n, sheet) * _STRETCHED
        above = back.length_to_point(at)
        if back.start.y > back.end.y:  # drawn from the centre
            above = back.length - above
        round_ = 2 * (sheet.lines["neck front"].length + above) + strap
        if "np_long" in n:
            round_ += 2 * n.np_long
        short = n.HEAD + OVER_HEAD - round_
        if short > 0:
            yield Finding(
                "BK1",
                Severity.REFUSE,
                f"The neck above the back strap is {round_:.1f} cm round and does not "
                f"go over a head of {n.HEAD:.1f} cm (HEAD) and {OVER_HEAD:g} cm.",
                "y(strap)",
                f'Hook one end (held = "{Held.HOOKED.value}"), lay the strap lower, or '
                "make the neck wider (dw).",
                {"round": round_, "HEAD": n.HEAD},
            )

    def _draw(self, d: Drafting) -> None:
        """Mark the strap on the neck's edge; draw it, if it is of cloth."""
        n, code, middle = d.n, _back(d.sheet), _marked(d)
        back = d.sheet.piece(code).with_marks(Mark("back strap", middle))
        long = 2 * middle.x
        if self.held is Held.ELASTIC:
            d.sheet = d.sheet.put(back)
            return
        sewn = self.held is Held.SEWN
        strap = _on_fold(n.strap_b, long / 2) if sewn else _to_hook(n.strap_b, long)
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(back, strap),
            BACK_STRAP,
            "back strap, half of it, from its fold to the edge"
            if sewn
            else "back strap, from edge to edge and under it to hook",
            amounts=(("long between the edges", long), ("wide", "strap_b")),
            frm=("Ks",),
        )


def _back(sheet: Sheet) -> str:
    return "BC" if "BC" in sheet.pieces else "B"


def _elastic(n: Numbers, sheet: Sheet) -> float:
    """Length of an elastic between the edges, cm."""
    return 2 * sheet.points["Ks"].x * (1 - n.strap_less / 100)


def _marked(d: Drafting) -> Point:
    """The middle of the strap on the neck's edge. Raises PaperError."""
    n = d.n
    d.part = "back"
    neck = d.sheet.edge(_back(d.sheet), "neck").path
    hits = neck.meets(Path.line(Point(-50.0, n.y_strap), Point(100.0, n.y_strap)))
    at = neck.at_length(hits[-1][0]) if hits else None
    if at is None or at.x < _LEAST:
        where = "at that level" if at is None else "there"
        raise PaperError(
            f"the back strap {n.y_strap:.1f} cm below the nape finds no edges to hold "
            f"{where}: make the back neck deeper, or the strap, y(strap), higher"
        )
    return d.found(
        "Ks",
        at,
        "middle of the back strap on the neck's edge",
        amounts=(("down from the nape", "y_strap"),),
    )


def _to_hook(w: float, long: float) -> Piece:
    """A strap from edge to edge, and on under the edge where it hooks."""
    a, b = Point(0.0, -_UNDER), Point(w, -_UNDER)
    c, e = Point(w, long), Point(0.0, long)
    edges = (
        straight("nape", a, b),
        straight("band lower", b, c),
        straight("strap end", c, e),
        straight("band upper", e, a),
    )
    hem = InnerLine("edge of the neck", Path.line(Point(0, 0), Point(w, 0)))
    return Piece(BACK_STRAP, "Back strap", edges, lines=(hem,))


def _on_fold(w: float, half: float) -> Piece:
    """A strap from its fold at the centre back to the edge."""
    a, b, c, e = Point(0.0, 0.0), Point(w, 0.0), Point(w, half), Point(0.0, half)
    edges = (
        straight("fold", a, b, EdgeKind.FOLD),
        straight("band lower", b, c),
        straight("strap end", c, e),
        straight("band upper", e, a),
    )
    return Piece(BACK_STRAP, "Back strap", edges)

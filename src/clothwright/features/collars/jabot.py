"""Jabot: ring flounces that fall from the neck down the centre front, or one down the
edge of a front that opens (transformations 5; blocks G13)."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import Sector
from clothwright.curves import Point
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.collars.collar_pieces import grained
from clothwright.features.openings.stand_band import banded
from clothwright.features.openings.stand_edging import Edging
from clothwright.features.openings.stand_pieces import FRONT, STAND
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Mark,
    MarkKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length, Ratio

JABOT_PIECE = "JA"

_SRC = "transformations 5, blocks G13"

_WITHIN, _ENDS = 1.27, 3.1
"""The widest allowance of the inner edge, and those of both ends with a little room
between them, cm."""

JABOT = RuleTable("jabot")


@JABOT.rule(
    "r jabot",
    "inner radius of the jabot",
    source=_SRC,
    key="r_jabot",
    formula="width/(fullness − 1)",
)
def _radius(j_wide: float, j_full: float) -> float:
    return j_wide / (j_full - 1)


@JABOT.rule(
    "r jabot hem",
    "outer radius of the jabot",
    source=_SRC,
    key="r_jabot_hem",
    formula="r + width",
)
def _outer(r_jabot: float, j_wide: float) -> float:
    return r_jabot + j_wide


@JABOT.rule(
    "φ jabot",
    "angle of the jabot",
    source=_SRC,
    key="phi_jabot",
    kind=Kind.ANGLE,
    formula="length/r",
)
def _angle(j_long: float, r_jabot: float) -> float:
    degrees = math.degrees(j_long / r_jabot)
    apart = 2 * (r_jabot - _WITHIN) * math.sin(math.radians(180.0 - degrees / 2))
    if degrees > 360.0 or r_jabot < 2 * _WITHIN or (degrees > 180.0 and apart < _ENDS):
        raise RuleError(
            f"the jabot would fill {degrees:.0f}° of a ring of {r_jabot:.1f} cm, whose "
            "ends have no room for their allowances: make it less full (jq), wider "
            "(jw) or shorter (jl)"
        )
    return degrees


class Jabot(Feature):
    """Jabot at the front of the neck."""

    kind: Literal["jabot"] = "jabot"
    title: ClassVar[str] = "Jabot"
    sentence: ClassVar[str] = (
        "Down the front from the neck falls a [jabot], {length} long and {width} wide, "
        "its edge {fullness} times as long as where it is sewn on."
    )
    shows: ClassVar[Shown] = {
        "jl": ("FC.cf", "F.cf", "FC.stand", "F.stand"),
        "jw": ("JA.hem",),
        "jq": ("JA.hem",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            JABOT_PIECE,
            Place.COLLAR,
            ("jabot",),
            {"inner": Role.EDGE, "end top": Role.EDGE},
            Role.HEM,
        ),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"jabot"})
    needs: ClassVar[dict[str, str]] = {
        "neckline": "a jabot falls from the neck; add a neckline"
    }
    clashes: ClassVar[dict[str, str]] = {
        "jabot": "an order has one jabot",
        "wrap": "fronts that cross have no centre line for a jabot; leave it off",
        "cowl": "a jabot has no place in the folds of a cowl; leave one of the two off",
        "open edges": "a jabot goes into an edge that laps over another; take a "
        '"button stand", or open the back',
        "strapless": "a strapless bodice has no neck for a jabot to fall from",
        "neck placket": "a jabot would close the slash of a neck placket; leave one of "
        "the two off",
        "cut-on facing": "a jabot goes into an edge that is sewn; let the button stand "
        "have a facing of its own",
        "front yoke": "a jabot is not yet led over the seam of a yoke; leave one of "
        "the two off",
    }

    length: Annotated[
        Length | None,
        Number(
            "j_long",
            "jl",
            "length of the jabot, from the neck down",
            _SRC,
            22.0,
            9.0,
            6.0,
            60.0,
            (12.0, 40.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "j_wide", "jw", "width of the jabot", _SRC, 9.0, 3.5, 3.0, 25.0, (5, 15)
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "j_full",
            "jq",
            "edge of the jabot to where it is sewn on",
            _SRC,
            3.0,
            None,
            1.2,
            6.0,
            (2.0, 4.0),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (JABOT,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the jabot", _draft),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        one = {JABOT_PIECE: Cuts("1", 1)}
        return one if _line(sheet)[1].name == STAND else {}

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        if _line(sheet)[1].name == STAND:
            yield (
                "The jabot goes into the edge of the right front, from the neck down "
                "to the cross on it."
            )
            return
        yield (
            "The two halves of the jabot are stitched on along the centre front, from "
            "the neck down to the cross, one to each side."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        in_edge = _line(sheet)[1].name == STAND
        yield Operation(
            Work.BAG,
            "Hem the jabot",
            ("Turned twice, narrow, along the outer edge and the lower end.",),
            edges=finished_edges(sheet, (JABOT_PIECE,), "hem", "end low"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.CIRCLE_HEM,
            count=0.5 if in_edge else 1.0,
        )
        clip = "Stay-stitch the inner edge and clip it until it lies straight."
        sewn = finished_edges(sheet, (JABOT_PIECE,), "inner", "end top")
        end = "The upper end is caught in with the neck."
        if in_edge:
            yield Operation(
                Work.ON_EDGE,
                "Baste the jabot to the edge of the right front",
                (
                    clip,
                    f"Right sides together, from the neck {fmt(n.j_long)} down to the "
                    f"cross; the facing is laid over it. {end}",
                ),
                edges=sewn,
                stitch=Stitch.LOCK,
                length=n.j_long,
                task=Task.BY_HAND,
            )
            return
        yield Operation(
            Work.ON_EDGE,
            "Stitch the jabot on",
            (
                f"{clip} Turn the allowance in.",
                "Lay both along the centre front, their turned edges touching, from "
                f"the neck {fmt(n.j_long)} down to the cross; stitch close to the "
                f"edges. {end}",
            ),
            edges=sewn,
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        piece, line = _line(sheet)
        if n.j_long > line.length + 0.05:
            yield Finding(
                "JA1",
                Severity.REFUSE,
                f"The jabot is {n.j_long:.1f} cm long, and the front where it is sewn "
                f"on {line.length:.1f} cm.",
                "jl",
                f"Make it (jl) {line.length:.1f} cm long or less.",
                {"long": n.j_long, "front": line.length},
            )
        sewn = sheet.length(JABOT_PIECE, "inner")
        if abs(sewn - n.j_long) > 0.1:
            yield Finding(
                "JA2",
                Severity.REFUSE,
                f"The inner edge of the jabot is {sewn:.1f} cm long and should be "
                f"{n.j_long:.1f} cm.",
                "JA.inner",
                "Draw it anew.",
                {"is": sewn, "aim": n.j_long},
            )


def _line(sheet: Sheet) -> tuple[Piece, Edge]:
    """The front, and its edge along which a jabot is sewn: that of its stand where it
    opens, else its centre line."""
    piece = sheet.piece("FC" if "FC" in sheet.pieces else "F")
    return piece, piece.edge(STAND if piece.has(STAND) else "cf")


def _draft(d: Drafting) -> None:
    """A ring's part whose inner arc is as long as it is sewn on, and its end marked on
    the front."""
    if banded(d.sheet) is FRONT:
        raise PaperError(
            "a jabot goes into an edge that is faced, and this front has a band: set "
            f'edge = "{Edging.FACED.value}" in "button stand", or leave the jabot off'
        )
    n = d.n
    d.part = "front"
    piece, line = _line(d.sheet)
    at = d.found(
        "Je",
        line.path.at_length(min(n.j_long, line.length)),
        "end of the jabot",
        amounts=(("from the neck down the front", "j_long"),),
        detail="on the edge of the stand" if line.name == STAND else "on the centre",
    )
    marked = piece.with_marks(Mark("end of the jabot", at, MarkKind.DRILL))
    d.sheet = d.sheet.put(marked)
    d.part = "jabot"
    d.start("Oj", Point(0.0, 0.0), "centre of the jabot's arcs")
    done = EdgeKind.FINISHED
    sector = Sector.whole(n.r_jabot, n.r_jabot_hem, n.phi_jabot)
    edges = sector.edges(
        ("inner", done), ("end low", done), ("hem", done), ("end top", done)
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(grained(Piece(JABOT_PIECE, "Jabot", edges))),
        JABOT_PIECE,
        "jabot",
        amounts=(
            ("with an inner arc of radius {}", "r_jabot"),
            ("as long as it is sewn on, {}", "j_long"),
            ("and an outer arc of radius {}", "r_jabot_hem"),
        ),
        frm=("Oj",),
        detail="both arcs from Oj, joined by lines that run to it",
    )

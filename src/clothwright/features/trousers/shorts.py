"""Shorts: trousers cut off above the ankle, their hem trued over both seams (blocks E,
truing 4; length and room of the hem common practice)."""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import BACK, FRONT
from clothwright.blocks.waist_line import Meets, waist_curve
from clothwright.curves import Path, Point
from clothwright.features.base import Feature, Number, Pin, Rank, Stage
from clothwright.features.trousers.trouser_sewing import stretched
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
    meetings,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "common practice"

ROOM = 4.0
"""A short leg is so much wider than what it ends on, cm (common practice: she sits)."""

_OFF_HEM = 3.0
"""The grain line ends so far above the hem, cm (our own)."""


class Shorts(Feature):
    """Trousers cut off as shorts."""

    kind: Literal["shorts"] = "shorts"
    title: ClassVar[str] = "Shorts"
    sentence: ClassVar[str] = (
        "They are cut off as [shorts], {length} long inside the leg."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (FRONT,), ("inseam", "hem"), (0.0, 1.0)),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"short legs"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "shorts are cut from trousers: begin with them"
    }
    clashes: ClassVar[dict[str, str]] = {
        "turn-ups": "turn-ups are drawn at the foot of a long leg; leave them off"
    }

    length: Annotated[
        Length | None,
        Number(
            "sh_in",
            "sh",
            "length of the shorts inside the leg",
            _SRC,
            10.0,
            4.0,
            3.0,
            65.0,
            (5.0, 30.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BELOW_WAIST, "the short legs", _cut_off),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        hem = sheet.length(FRONT, "hem") + sheet.length(BACK, "hem")
        level = sheet.points["Sfi"].y
        body = leg_girth(n, level)
        if hem < body + ROOM - 0.05:
            yield Finding(
                "SH1",
                Severity.REFUSE if hem < body else Severity.WARN,
                f"A leg of the shorts is {hem:.1f} cm round at the hem, where her leg "
                f"(TH, KN) is about {body:.1f} cm; {ROOM:g} cm over it are wanted.",
                "sh",
                "Make the knee (KW) wider, give the hip more ease (Eh), or measure TH "
                "again.",
                {"hem": hem, "leg": body},
            )


def leg_girth(n: Numbers, level: float) -> float:
    """Her leg at a level below the crotch, cm: from the thigh to the knee as a cone."""
    share = min(1.0, max(0.0, level / n.yk))
    return n.TH + (n.KN - n.TH) * share


def _cut_off(d: Drafting) -> None:
    """Measure down the inseam, level across to the side; the back by as much of its
    side, and of its inseam before it is stretched."""
    n = d.n
    front = d.sheet.piece(FRONT)
    inseam, side = going_down(front, "inseam"), going_down(front, "side")
    if n.sh_in > inseam.length - 5.0:
        raise PaperError(
            f"the shorts (sh) are {n.sh_in:.1f} cm long inside the leg, and the "
            f"trousers {inseam.length:.1f} cm: make them shorter"
        )
    d.part = "trouser front"
    a = d.found(
        "Sfi",
        inseam.at_length(n.sh_in),
        "hem of the shorts on the front inseam",
        amounts=(("down from the crotch", "sh_in"),),
    )
    level = Path.line(Point(-500.0, a.y), Point(500.0, a.y))
    fault = "the side ends above the hem of the shorts: make them (sh) shorter"
    along = meetings(side, level, fault)[0][0]
    b = d.found("Sfs", side.at_length(along), "hem on the front's side", detail="level")
    _hem(d, FRONT, a, b)
    d.part = "trouser back"
    back = d.sheet.piece(BACK)
    inseam, side = going_down(back, "inseam"), going_down(back, "side")
    short = stretched(n)
    a = d.found(
        "Sbi",
        inseam.at_length(n.sh_in - short),
        "hem of the shorts on the back inseam",
        amounts=(("down from the crotch", n.sh_in - short),),
        detail="less what is stretched" if short else "",
    )
    b = d.found(
        "Sbs",
        side.at_length(along),
        "hem on the back's side",
        amounts=(("down from the waist", along),),
        detail="as long as the front's",
    )
    _hem(d, BACK, a, b)


def _hem(d: Drafting, code: str, inseam: Point, side: Point) -> None:
    """The hem square to both seams, which are cut back to it."""
    piece = cut_leg(d.sheet.piece(code), inseam, side)
    mark = "f" if code == FRONT else "b"
    d.lay(
        Verb.REDRAW,
        d.sheet.put(piece),
        f"{code}.hem",
        f"{'front' if code == FRONT else 'back'} cut off, its hem square to both seams",
        frm=(f"S{mark}i", f"S{mark}s"),
        lines=(piece.edge("hem").path,),
    )


def cut_leg(piece: Piece, inseam: Point, side: Point) -> Piece:
    """A leg cut off between two points of its seams, the hem square to both."""
    ends = {"inseam": inseam, "side": side}
    meets = []
    old = "hem" if piece.has("hem") else "hem in"  # of a turn-up
    for edge in (piece.before(old), piece.after(old)):
        at = ends[edge.name]
        way = edge.path.direction_at_length(edge.path.length_to_point(at))
        meets.append(Meets(at, way))
    hem = waist_curve(meets[0], meets[1])
    new = [Edge("hem", hem, EdgeKind.FINISHED)]
    sheet = redraw(Sheet().put(piece), piece.code, [old], new)
    return _shorter(sheet.piece(piece.code), hem)


def _shorter(piece: Piece, hem: Path) -> Piece:
    """The piece with its grain line, down the crease, ended above the hem."""
    if piece.grain is None:
        return piece
    foot, head = sorted(piece.grain, key=lambda p: -p.y)
    crease = Path.line(Point(foot.x, -500.0), Point(foot.x, 500.0))
    fault = (
        "the crease runs beside the hem of the shorts: make them (sh) longer, or the "
        "hem of the trousers (HW) narrower"
    )
    low = hem.at_length(meetings(hem, crease, fault)[0][0]).y
    foot = Point(foot.x, min(foot.y, low - _OFF_HEM))
    return Piece(
        piece.code, piece.name, piece.edges, piece.marks, piece.lines, (foot, head)
    )


def going_down(piece: Piece, name: str) -> Path:
    """An edge from the top down."""
    path = piece.edge(name).path
    return path if path.start.y < path.end.y else path.reversed()

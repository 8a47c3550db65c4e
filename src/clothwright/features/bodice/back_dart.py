"""The back shoulder dart at work: trued, drawn, and led to the panel or the neck.

First garment 6.1. The block draws the dart open at the middle of the shoulder. Here the
shoulder is ruled over the closed dart, and the dart is led elsewhere by slash and tape.
A panel line takes it up itself: `back_princess`, `shoulder_princess`.
"""

from dataclasses import dataclass, replace

from clothwright.blocks.bodice_curves import inward_back
from clothwright.curves import Line, Path, Point, Vector, distance, meet_lines
from clothwright.features.base import Rank, Stage
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    On,
    PaperError,
    SeamKind,
    Sheet,
    Verb,
    cut,
    meetings,
    redraw,
    straight,
    tape,
)

DART = "back shoulder dart"
"""Code of the dart as a seam of the back with itself."""

LEG_NECK, LEG_TIP = "shoulder dart neck", "shoulder dart tip"
"""Legs of the dart, edges of the back: the neck's side and the tip's."""

CLEAR_OF_NECK = 1.2
"""A dart keeps this far from the neck end of the shoulder, cm (3.1.4)."""

NECK_OF_DART = 2.0
"""A neck widened by no more than this may have a dart led to it, cm (6.1)."""


def has_dart(sheet: Sheet) -> bool:
    """True while the back on the table has its shoulder dart open."""
    return "B" in sheet.pieces and sheet.piece("B").has(LEG_NECK)


def pivot(sheet: Sheet) -> str:
    """Name of the mark about which the dart is closed."""
    return "Z" if "Z" in sheet.points else "Ps"


# -- truing ---------------------------------------------------------------------------
def close_about_point(d: Drafting) -> None:
    """Rule the shoulder over the dart, closed about its own point."""
    if d.n.sd > 0:
        d.part = "back"
        _ruled_over(d)


def close_about_panel(d: Drafting) -> None:
    """The same about the place Z of the panel line, to which the dart is led."""
    n = d.n
    if n.sd <= 0:
        return
    d.part = "back"
    z = d.found(
        "Z",
        Point(n.x_Z, n.y_Z),
        "new point of the shoulder dart",
        amounts=(("from the centre back line", "x_Z"), ("down from the nape", "y_Z")),
        detail="where the panel line from the pitch to Pd comes nearest to Ps",
    )
    legs = [straight(LEG_NECK, d["D1s"], z), straight(LEG_TIP, z, d["D2s"])]
    sheet = redraw(d.sheet, "B", [LEG_NECK, LEG_TIP], legs)
    d.lay(Verb.REDRAW, sheet, "B", "legs of the shoulder dart, from D1s and D2s to Z")
    _ruled_over(d)


def _ruled_over(d: Drafting) -> None:
    about = pivot(d.sheet)
    d.turned("tb′", "tb", about, -d.n.theta_s, "shoulder tip when D2s lies on D1s")
    d.draw(
        "back shoulder, closed",
        Path.line(d["hb"], d["tb′"]),
        "back shoulder over the closed dart",
        frm=("hb", "tb′"),
    )


ABOUT_POINT = Stage(Rank.BACK_SHOULDER, "the back shoulder dart", close_about_point)


# -- drawing it ------------------------------------------------------------------------
@dataclass(frozen=True)
class DrawnShoulder:
    """The back shoulder as it stands on the piece, with its dart open if it has one."""

    tip: Point
    inward: Vector
    """Square to the shoulder at the tip, into the piece."""

    edges: tuple[Edge, ...]
    """From the neck to the tip, clockwise."""


def drawn_shoulder(d: Drafting) -> DrawnShoulder:
    """The shoulder from Nb′ to Tb, opened again over its trued dart. Raises PaperError
    for a dart that has no place, or that the neck comes too near to."""
    n, nb, tb = d.n, d["Nb′"], d["Tb"]
    if not has_dart(d.sheet):
        inward = inward_back(n.sigma_b_new)
        return DrawnShoulder(tb, inward, (straight("shoulder", nb, tb),))
    if n.theta_s <= 0:
        raise PaperError(
            "the back shoulder dart has no place: say with back_shoulder where it "
            'goes, "to panel", "neck" or "seam", or set back_shoulder_dart to 0'
        )
    if n.dart_at - n.sd / 2 - (n.Sb - n.Lrb) < CLEAR_OF_NECK:
        raise PaperError(
            f"the neck comes within {CLEAR_OF_NECK:g} cm of the back shoulder dart: "
            'make the neck narrower, or leave the dart out with back_shoulder = "none"'
        )
    about = pivot(d.sheet)
    point = d[about]
    inner = d.found(
        "D1s′",
        meet_lines(nb, tb - nb, point, d["D1s"] - point),
        "shoulder dart trued, neck side",
        detail="where its leg meets the shoulder ruled from Nb′ to Tb",
    )
    outer = d.turned("D2s′", "D1s′", about, "theta_s", "shoulder dart trued, tip side")
    tip = d.turned("Tbo", "Tb", about, "theta_s", "finished tip, the dart open again")
    edges = (
        straight("shoulder neck", nb, inner),
        straight(LEG_NECK, inner, point),
        straight(LEG_TIP, point, outer),
        straight("shoulder", outer, tip),
    )
    return DrawnShoulder(tip, inward_back(n.sigma_b_new + n.theta_s), edges)


def _ruled_through(sheet: Sheet) -> Sheet:
    """The two parts of the shoulder as one edge, the dart between them closed; the side
    of a funnel, which runs on from it, stays."""
    b = sheet.piece("B")
    *side, last = b.edge("shoulder neck").path.segments
    rest = Line(last.start, b.edge("shoulder").path.end)
    new = Edge("shoulder", Path((*side, rest)))
    return redraw(sheet, "B", ["shoulder neck", "shoulder"], [new])


def _renamed(sheet: Sheet, old: str, new: str) -> Sheet:
    """An edge of the back under another name."""
    return redraw(sheet, "B", [old], [replace(sheet.edge("B", old), name=new)])


# -- leading it ------------------------------------------------------------------------
BLADE_LOW, BLADE_HIGH = "blade low", "blade high"
"""Legs of the dart at the armhole: on the side panel's paper, on the paper turned."""


def lead_to_yoke(d: Drafting) -> None:
    """Slash level from Ps to the armhole and tape the shoulder dart: the yoke closes
    it, and its seam opens at the armhole (transformations 1.5)."""
    if not has_dart(d.sheet):
        return
    d.part = "back"
    ps, arm = d["Ps"], d.sheet.edge("B", "armhole").path
    level = Path.line(ps, Point(ps.x + 60.0, ps.y))
    hits = meetings(
        arm,
        level,
        "the point of the back shoulder dart lies above the tip or below the arm, "
        'so that no yoke can take it: set back_shoulder = "ease"',
    )
    at = d.found(
        "Yab",
        arm.at_length(hits[0][0]),
        "seam of the back yoke on the armhole",
        amounts=(("along the armhole from the tip", hits[0][0]),),
        detail="level with Ps",
    )
    lead_to_panel(d, Path.line(at, ps), "Yab", "Ps")


def lead_to_panel(
    d: Drafting, slash: Path, start_mark: str = "Qb", about: str = "Z"
) -> None:
    """Cut along `slash`, from the armhole to Z, and tape the shoulder dart: what lies
    above turns about Z (6.1). The armhole's upper part becomes "armhole high"."""
    start = On(
        "armhole", d.sheet.edge("B", "armhole").path.length_to_point(slash.start)
    )
    sheet = cut(
        d.sheet,
        "B",
        slash,
        start,
        CornerAfter(LEG_NECK),
        edge="blade",
        seam="blade",
        seam_name="dart at the armhole",
        into=(("B", "Back"), ("B high", "Back, upper part")),
    )
    d.lay(Verb.CUT, sheet, "B", f"back slashed from {start_mark} to {about}")
    sheet = tape(sheet, DART)
    for old, new in (
        ("blade", BLADE_LOW),
        ("blade 2", BLADE_HIGH),
        ("armhole 2", "armhole high"),
    ):
        sheet = _renamed(sheet, old, new)
    sheet = sheet.named(**{f"{start_mark}′": sheet.edge("B", BLADE_HIGH).path.start})
    d.lay(
        Verb.TAPE,
        _ruled_through(sheet),
        "B",
        "shoulder dart closed",
        amounts=(
            ("what lies above the slash turned by {}", "theta_s"),
            ("the slash opens by {} at the armhole", _gap(sheet)),
        ),
        frm=(about,),
    )


def _gap(sheet: Sheet) -> float:
    high, low = sheet.edge("B", BLADE_HIGH).path, sheet.edge("B", BLADE_LOW).path
    return distance(high.start, low.end)


def lead_to_neck(d: Drafting) -> None:
    """Slash from the middle of the neck to Ps and tape the shoulder dart: the neck's
    outer part turns about Ps, and the dart opens there (6.1)."""
    n = d.n
    if not has_dart(d.sheet):
        return
    if n.dw > NECK_OF_DART:
        raise PaperError(
            "a back shoulder dart goes to the neck only where that is at most "
            f"{NECK_OF_DART:g} cm wider than the standard: make the neck narrower, or "
            'set back_shoulder = "ease"'
        )
    d.part = "back"
    neck = d.sheet.edge("B", "neck").path
    start = d.found(
        "Hb",
        neck.at_length(neck.length / 2),
        "start of the neck dart",
        amounts=(("along the neck from the centre back", neck.length / 2),),
        detail="half way",
    )
    sheet = cut(
        d.sheet,
        "B",
        Path.line(start, d["Ps"]),
        On("neck", neck.length / 2),
        CornerAfter(LEG_NECK),
        edge="dart neck",
        seam="back neck dart",
        seam_name="back neck dart",
        into=(("B high", "Back, neck part"), ("B", "Back")),
    )
    d.lay(Verb.CUT, sheet, "B", "back slashed from Hb to Ps")
    dart = sheet.seam(DART)
    sheet = tape(sheet.sew(replace(dart, left=dart.right, right=dart.left)), DART)
    for old, new in (
        ("dart neck", NECK_LEGS[0]),
        ("dart neck 2", NECK_LEGS[1]),
        ("neck 2", "neck side"),
    ):
        sheet = _renamed(sheet, old, new)
    seam = replace(sheet.seam("back neck dart"), kind=SeamKind.DART)
    d.lay(
        Verb.TAPE,
        _ruled_through(sheet.sew(seam)),
        "B",
        "shoulder dart closed; the dart is at the neck now",
        amounts=(("the paper beside the neck turned by {}", "theta_s"),),
        frm=("Ps",),
    )


NECK_LEGS = ("dart neck cb", "dart neck side")
"""Legs of a dart at the back neck: the centre's side and the shoulder's."""

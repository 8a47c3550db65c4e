"""A yoke cut across a panel seam: both panels are divided along one line, and what lies
above it is taped into one yoke or stays seamed (transformations 1.5).
"""

from dataclasses import replace
from enum import Enum

from clothwright.curves import Path, Point, distance, from_pair
from clothwright.features.bodice.bodice_seams import back_panel, front_panel
from clothwright.features.bodice.yoke_cut import (
    FRONT,
    Yoke,
    divide,
    mark_ends,
    on_armhole,
    yoke_line,
)
from clothwright.features.chains import Chains
from clothwright.features.grain import grained_as
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    JOINT,
    JOINT_RIGHT,
    Drafting,
    Ease,
    Edge,
    NotchPair,
    On,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    cut,
    meetings,
    redraw,
    tape,
)
from clothwright.truing.tolerances import NOTCH_ROOM

LEAST_OF_SEAM = 1.5
"""A yoke holds so much of a panel seam that it crosses, or leaves so much armhole above
one that it does not, cm (our own choice: two seams nearer to each other are a lump)."""

ONE_LINE = 0.1
"""Panels that are taped lie within this of each other, cm: what a pencil rules over."""

NOTCHED = 8.0
"""A shoulder or a panel seam in a yoke is notched at its middle from here on, cm (first
garment 19)."""


class YokePanels(Enum):
    """What becomes of the panel seam in the yoke."""

    TAPED = "taped"
    """Its panels are taped into one piece: a dart that ends in the seam is closed."""

    SEAMED = "seamed"
    """It is sewn there too: the yoke is in two parts."""


PANEL_IN_YOKE = {
    "S130": "front panel seam in a yoke, between its centre and its side",
    "S131": "back panel seam in a yoke, between its centre and its side",
}
"""The codes of a panel seam within a yoke."""

_CODES = {"front": ("S1", "S130"), "back": ("S2", "S131")}
"""The panel seam below the yoke, and in it."""


def divide_half(d: Drafting, y: Yoke, centre: Point, panels: YokePanels) -> None:
    """Cut the yoke off a half in one piece, off the centre panel alone where the line
    ends on its armhole, or across both panels. Raises PaperError."""
    if y.piece in d.sheet.pieces:
        divide(d, y, centre)
        return
    p = d.sheet.piece(f"{y.piece}C")
    if p.has("armhole") and on_armhole(d, y, centre, p.edge("armhole").path):
        divide(d, replace(y, piece=p.code), centre)
        return
    _across(d, y, centre, panels)


def crosses(sheet: Sheet, y: Yoke) -> bool:
    """True when the yoke's seam goes over both panels of its half."""
    flank = f"{y.piece}S"
    return flank in sheet.pieces and sheet.piece(flank).has("yoke")


# -- cutting -------------------------------------------------------------------------
def _across(d: Drafting, y: Yoke, centre: Point, panels: YokePanels) -> None:
    """Lay the side panel against the centre panel above the line, rule it over both,
    cut both, and tape or sew what is above."""
    d.part = y.half
    code, flank = f"{y.piece}C", f"{y.piece}S"
    mid, side = d.sheet.piece(code), d.sheet.piece(flank)
    below, inside = _CODES[y.half]
    (left,), (right,) = d.sheet.seam(below).left, d.sheet.seam(below).right
    mine, its = d.sheet.run_path(left), d.sheet.run_path(right)
    missed = (
        f"{_misses(y)} the panel seam: make the yoke ({y.key}) deeper, or so much less "
        "deep that it ends above the panel seam"
    )
    s = meetings(mine, _level(centre.y - d.n[y.slope] / 2), missed)[0][0]
    for _ in range(2):
        m = from_pair(its.start, its.at_length(s), mine.start, mine.at_length(s))
        arm = side.edge("armhole").path.moved(m)
        edge, line = yoke_line(d, y, centre, mid, arm)
        hits = line.meets(mine)
        if len(hits) != 1 or hits[0][1] > min(mine.length, its.length) - 1.0:
            raise PaperError(
                f"{_misses(y)} the panel seam once: make the yoke ({y.key}) deeper or "
                "less deep, or give its seam no bow and no rise"
            )
        at, s = hits[0]
    if s < LEAST_OF_SEAM:
        raise PaperError(
            f"the seam of the {y.half} yoke meets the panel seam only {s:.1f} cm from "
            f"its start; {LEAST_OF_SEAM:g} cm must stay: make the yoke ({y.key}) "
            "deeper, or so much less deep that it ends above the panel seam"
        )
    whole, laid = keep_whole(keep_whole(d.sheet, code), flank), side.moved(m)
    d.lay(
        Verb.MOVE,
        whole.put(laid),
        flank,
        f"{side.name.lower()} laid against the {mid.name.lower()}, the edges of their "
        "seam together from its start down",
    )
    mark_ends(d, y, centre, mid, line)
    d.found(
        f"{y.marks[0]}p",
        mine.at_length(s),
        f"seam of the {y.half} yoke on the panel seam",
        amounts=(("along the panel seam from its start", s),),
    )
    outer, inner = line.split_at_length(at)
    inner = inner.pinned(mine.at_length(s), inner.end)
    outer = outer.pinned(outer.start, m(its.at_length(s)))
    sheet = _cut(d.sheet, mid, inner, ("panel", edge), y.new, y)
    sheet = _cut(sheet, laid, outer, ("armhole", "panel"), _side_of(y), y)
    sheet = _sewn(sheet.drawn(**{f"{y.half} yoke, seam": line}), y)
    d.lay(
        Verb.CUT,
        _panel_seams(d, sheet, y),
        f"{y.new[0]}, {y.new[0]}S",
        f"{y.half} yoke cut off both panels, from {y.marks[1]} to {y.marks[0]}",
        frm=y.marks,
        lines=(line,),
    )
    sheet = d.sheet.put(d.sheet.piece(flank).moved(m.inverse()))
    if panels is YokePanels.TAPED:
        _apart(sheet, y)
        sheet = _taped(sheet, y, inside)
        d.lay(
            Verb.TAPE,
            sheet,
            y.new[0],
            f"{y.half} yoke taped into one piece over the panel seam",
            frm=(f"{y.marks[0]}p",),
        )
    parts = [
        grained_as(sheet.piece(c), of)
        for c, of in ((code, mid), (y.new[0], mid), (flank, side))
    ]
    sheet = sheet.put(*parts)
    if panels is YokePanels.SEAMED:
        part = sheet.piece(_side_of(y)[0])
        arm_left = part.edge("armhole").length
        if arm_left < LEAST_OF_SEAM:
            raise PaperError(
                f"the seam of the {y.half} yoke ends {arm_left:.1f} cm from the panel "
                f"seam on the armhole; {LEAST_OF_SEAM:g} cm must stay: make the yoke "
                f"({y.key}) deeper, or less deep"
            )
        sheet = sheet.put(grained_as(part, laid))
    for c in (code, flank):
        sheet = off_corners(sheet, c)
    d.sheet = sheet


def _misses(y: Yoke) -> str:
    return f"the seam of the {y.half} yoke does not meet"


def _level(at: float) -> Path:
    return Path.line(Point(-60.0, at), Point(160.0, at))


def _side_of(y: Yoke) -> tuple[str, str]:
    code, name = y.new
    return f"{code}S", f"{name}, side"


def _cut(
    sheet: Sheet,
    p: Piece,
    line: Path,
    ends: tuple[str, str],
    new: tuple[str, str],
    y: Yoke,
) -> Sheet:
    """Cut a panel along a line that runs towards the centre, between two edges."""
    start, end = ends
    if y.half == "back":  # whose armhole runs down and whose centre runs up
        line, start, end = line.reversed(), end, start
    spots = [
        On(e, p.edge(e).path.length_to_point(at))
        for e, at in ((start, line.start), (end, line.end))
    ]
    return cut(
        sheet,
        p.code,
        line,
        *spots,
        edge="yoke",
        seam=f"yoke on {p.code}",
        seam_name=f"{y.half} yoke",
        into=(new, (p.code, p.name)),
    )


def _sewn(sheet: Sheet, y: Yoke) -> Sheet:
    """Both parts of the half sewn in one seam from the centre, the panels first."""
    front = y is FRONT
    codes = f"{y.piece}C", f"{y.piece}S"
    lower = tuple(Run(c, "yoke", front) for c in codes)
    upper = tuple(Run(c, "yoke", not front) for c in (y.new[0], _side_of(y)[0]))
    joint = sheet.chain_length(lower[:1])
    seam = Seam(
        f"{y.half} yoke",
        f"{y.half} yoke",
        lower,
        upper,
        f"centre {y.half}",
        "armhole",
        Ease.about(0.0, 0.1),
        notches=joint_notches(joint, sheet.chain_length(lower), y.ticks),
    )
    return sheet.unsew(*(f"yoke on {c}" for c in codes)).sew(seam)


def joint_notches(joint: float, whole: float, ticks: int) -> tuple[NotchPair, ...]:
    """At the panel seam, and in the middle of the longer part beside it."""
    longer = joint / 2 if joint > whole - joint else (joint + whole) / 2
    at = NotchPair(joint, joint, 0, JOINT)
    if abs(longer - joint) < 2 * NOTCH_ROOM:
        return (at._replace(ticks=ticks),)
    return tuple(sorted((at._replace(ticks=1), NotchPair(longer, longer, ticks))))


# -- the panel seam ------------------------------------------------------------------
def _panel_seams(d: Drafting, sheet: Sheet, y: Yoke) -> Sheet:
    """The panel seam below the yoke, as it is stated of any panels, and in it."""
    below, inside = _CODES[y.half]
    old = sheet.seam(below)
    middle = sheet.chain_length(old.left[:1]) / 2
    notched = middle >= NOTCHED / 2
    upper = Seam(
        inside,
        f"{y.half} yoke panel",
        old.left[:1],
        old.right[:1],
        old.start,
        f"{y.half} yoke",
        Ease.about(0.0, 0.1),
        notches=(NotchPair(middle, middle, y.ticks),) if notched else (),
    )
    state = front_panel if y is FRONT else back_panel
    lower = state(Chains(sheet), d.n)
    assert lower is not None
    return sheet.sew(replace(lower, start=f"{y.half} yoke"), upper)


def _apart(sheet: Sheet, y: Yoke) -> None:
    """Raises PaperError when the panels above the line have not one line."""
    s = sheet.seam(_CODES[y.half][1])
    a, b = (sheet.run_path(chain[0]) for chain in (s.left, s.right))
    m = from_pair(b.start, b.end, a.start, a.end)
    places = [i / 12 for i in range(13)]
    gaps = [
        distance(a.at_length(a.length * t), m(b.at_length(b.length * t)))
        for t in places
    ]
    gap = max(*gaps, abs(a.length - b.length))
    if gap > ONE_LINE:
        raise PaperError(
            f"the {y.half} panels lie {gap:.1f} cm apart within the yoke, for the seam "
            f"shapes them there: make the yoke ({y.key}) less deep, or leave its parts "
            f'seamed (panels = "{YokePanels.SEAMED.value}")'
        )


def _taped(sheet: Sheet, y: Yoke, inside: str) -> Sheet:
    """Both parts of the yoke in one piece, each of its edges in one line."""
    code, name = y.new
    sheet = tape(sheet, inside, tolerance=ONE_LINE, code=code, name=name)
    for edge in ("shoulder", "armhole", "yoke"):
        sheet = in_one(sheet, code, edge)
    seam = sheet.seam(f"{y.half} yoke")
    sheet = sheet.sew(replace(seam, right=seam.right[:1]))
    return _one_shoulder(sheet)


def in_one(sheet: Sheet, code: str, edge: str) -> Sheet:
    """An edge that was taped of two, in one."""
    p = sheet.piece(code)
    if not p.has(f"{edge} 2"):
        return sheet
    run = [edge, f"{edge} 2"]
    if p.after(edge).name != run[1]:
        run.reverse()
    first, second = (p.edge(e).path for e in run)
    whole = first + second.pinned(first.end, second.end)
    return redraw(sheet, code, run, [Edge(edge, whole, p.edge(edge).kind)])


def _one_shoulder(sheet: Sheet) -> Sheet:
    """Both seams of a shoulder that a panel line had divided in one, as one of its
    halves has no panel seam there now."""
    parts = [s for s in sheet.seams if s.code in ("S3", "S3a")]
    if not parts:
        return sheet
    left = tuple(dict.fromkeys(r for s in parts for r in s.left))
    right = tuple(dict.fromkeys(r for s in parts for r in s.right))
    a, c = sheet.chain_length(left), sheet.chain_length(right)
    notches: list[NotchPair] = []
    for chain, whole, note in ((left, a, JOINT), (right, c, JOINT_RIGHT)):
        if len(chain) > 1:
            at = sheet.chain_length(chain[:1]) / whole
            notches.append(NotchPair(at * a, at * c, 1, note))
    if not notches and a >= NOTCHED:
        notches.append(NotchPair(a / 2, c / 2, 1))
    seam = replace(
        parts[0],
        name="shoulder",
        left=left,
        right=right,
        end="tip",
        ease=Ease.about(sum(s.ease.plan for s in parts), 0.05),
        notches=tuple(notches[:1]),
    )
    return sheet.unsew("S3a").sew(seam)

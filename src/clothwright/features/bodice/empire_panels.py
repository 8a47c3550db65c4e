"""An empire seam across princess lines: each panel is divided, drawn in under the bust
at the panel seam, and the midriff taped into one piece or seamed as the panels are.
"""

from dataclasses import replace
from enum import Enum

from clothwright.curves import Path, Point, direction, distance
from clothwright.features.bodice.bodice_seams import back_panel, front_panel
from clothwright.features.bodice.empire_cut import (
    ABOVE_WAIST,
    BELOW_POINT,
    FRONT,
    Half,
    across,
    cut_across,
    divide,
    drawn_in,
    ends,
    level_line,
)
from clothwright.features.bodice.yoke_panels import NOTCHED, in_one, joint_notches
from clothwright.features.chains import Chains
from clothwright.features.grain import grained_as
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    NotchPair,
    PaperError,
    Run,
    Seam,
    Sheet,
    Verb,
    meetings,
    redraw,
    tape,
)

FAIRED = 4.0
"""A panel edge is drawn in from so far above the seam at most, cm, and from half of
what lies between that and the dart's point (our own choice: a smooth line)."""


class Midriff(Enum):
    """What becomes of the panel seam below the empire seam."""

    TAPED = "taped"
    """Its panels are taped into one piece, as a waist dart is closed there."""

    SEAMED = "seamed"
    """It runs on to the waist: the midriff is in panels too."""


PANEL_IN_MIDRIFF = {
    "S132": "front panel seam below an empire seam",
    "S133": "back panel seam below an empire seam",
}
"""The codes of a panel seam within a midriff."""

_CODES = {"front": ("S1", "S132"), "back": ("S2", "S133")}
"""The panel seam above the empire seam, and below it."""


def divide_half(
    d: Drafting, h: Half, level: float, up: float, midriff: Midriff
) -> None:
    """Divide a half in one piece, or both its panels. Raises PaperError."""
    if h.piece in d.sheet.pieces:
        divide(d, h, level, up)
    else:
        _over_panels(d, h, level, up, midriff)


def _over_panels(
    d: Drafting, h: Half, level: float, up: float, midriff: Midriff
) -> None:
    d.part = h.half
    code, flank = f"{h.piece}C", f"{h.piece}S"
    table = keep_whole(keep_whole(d.sheet, code), flank)
    mid, side = table.piece(code), table.piece(flank)
    c, s, down, edge = ends(d, h, mid, side, level, up)
    a, b, feet = _drawn_in(d, h, table, level)
    first = across(h, c, a, None, direction(a, feet[0]))
    second = across(h, b, s, direction(b, feet[1]), down)
    name, low = h.new[1], (f"{h.new[0]}S", f"{h.new[1]}, side")
    sheet = cut_across(
        d.sheet, d.sheet.piece(code), first, h.centre, "panel", "under", h.new, h
    )
    sheet = cut_across(
        sheet, sheet.piece(flank), second, "panel", edge, "under", low, h
    )
    sheet = _panel_seams(d, _sewn(sheet, h, low[0]), h)
    d.lay(
        Verb.CUT,
        sheet,
        f"{h.new[0]}, {low[0]}",
        f"both {h.half} panels cut across below the bust",
        amounts=(("at the side, up from the waist", up),),
        detail="square to every seam that the line meets",
        lines=(first, second),
    )
    if midriff is Midriff.TAPED:
        sheet = _taped(sheet, h, name)
        d.lay(
            Verb.TAPE,
            sheet,
            h.new[0],
            f"{name.lower()} taped into one piece over the panel seam",
        )
    whole = {code: mid, flank: side, h.new[0]: mid, low[0]: side}
    cut = [of for of in whole if of in sheet.pieces]
    sheet = sheet.put(*(grained_as(sheet.piece(of), whole[of]) for of in cut))
    for of in cut:
        sheet = off_corners(sheet, of)
    d.sheet = sheet


def _drawn_in(
    d: Drafting, h: Half, table: Sheet, level: float
) -> tuple[Point, Point, tuple[Point, Point]]:
    """Draw both panel edges in at the seam by what it takes in more, smoothly from
    above and straight to the waist: the places on the centre and on the side panel, and
    their ends at the waist."""
    seam = table.seam(_CODES[h.half][0])
    runs = seam.left[0], seam.right[0]
    mine, its = (table.run_path(r) for r in runs)
    point = level - d.n["y_Pf" if h is FRONT else "y_Pd"]
    reach = meetings(
        mine,
        level_line(level),
        "the empire seam misses the panel seam: make it another depth (ue)",
    )[-1][0]
    below = mine.length - reach
    if point < BELOW_POINT or below < ABOVE_WAIST / 2:
        raise PaperError(
            f"the empire seam comes within {BELOW_POINT:g} cm of the point of the "
            f"{h.dart}: make it deeper (ue)"
            if point < BELOW_POINT
            else "the empire seam comes too near to the waist at the panel seam: make "
            "it less deep (ue)"
        )
    spots = [p.at_length(p.length - below) for p in (mine, its)]
    new = drawn_in(d, h, spots[0], spots[1], mine.end_direction)
    feet = mine.end, its.end
    if d.n[h.number] > 0:
        fair = min(FAIRED, point / 2)
        for run, path, at in zip(runs, (mine, its), new, strict=True):
            line = _faired(path, path.length - below - fair, at)
            line = line.reversed() if run.backward else line
            table = redraw(table, run.piece, ["panel"], [Edge("panel", line)])
        d.lay(
            Verb.REDRAW,
            table,
            f"{runs[0].piece}.panel, {runs[1].piece}.panel",
            f"{h.half} panel edges drawn in under the bust, and straight from there",
            amounts=(
                ("each by half of {}", h.number),
                ("beginning {} above the seam", fair),
            ),
        )
    else:
        d.sheet = table
    return *new, feet


def _faired(path: Path, start: float, at: Point) -> Path:
    """A panel edge led from a length along it to a place beside it in a curve, and on
    to its end in a straight line."""
    kept, _ = path.split_at_length(start)
    reach = distance(kept.end, at) / 3
    curve = Path.cubic(
        kept.end,
        kept.end + kept.end_direction * reach,
        at - direction(kept.end, at) * reach,
        at,
    )
    return kept + curve + Path.line(at, path.end)


def _sewn(sheet: Sheet, h: Half, low: str) -> Sheet:
    """Both parts sewn in one seam from the centre."""
    codes = f"{h.piece}C", f"{h.piece}S"
    upper = tuple(Run(c, "under", not h.clockwise) for c in codes)
    lower = tuple(Run(c, "under", h.clockwise) for c in (h.new[0], low))
    joint, whole = sheet.chain_length(upper[:1]), sheet.chain_length(upper)
    seam = Seam(
        f"{h.half} empire",
        f"{h.half} empire seam",
        upper,
        lower,
        f"centre {h.half}",
        "side",
        Ease.about(0.0, 0.1),
        notches=joint_notches(joint, whole, h.ticks),
    )
    return sheet.unsew(*(f"under of {c}" for c in codes)).sew(seam)


def _panel_seams(d: Drafting, sheet: Sheet, h: Half) -> Sheet:
    """The panel seam above, as it is stated of any panels, and below."""
    above, below = _CODES[h.half]
    old = sheet.seam(above)
    middle = sheet.chain_length(old.left[1:]) / 2
    notched = middle >= NOTCHED / 2
    lower = Seam(
        below,
        f"{h.half} midriff panel",
        old.left[1:],
        old.right[1:],
        "empire seam",
        old.end,
        Ease.about(0.0, 0.1),
        notches=(NotchPair(middle, middle, h.ticks),) if notched else (),
    )
    state = front_panel if h is FRONT else back_panel
    upper = state(Chains(sheet), d.n)
    assert upper is not None
    return sheet.sew(replace(upper, end="empire seam"), lower)


def _taped(sheet: Sheet, h: Half, name: str) -> Sheet:
    """The midriff in one piece; its waist keeps two parts, as over a dart."""
    code = h.new[0]
    sheet = tape(sheet, _CODES[h.half][1], code=code, name=name)
    sheet = in_one(sheet, code, "under")
    seam = sheet.seam(f"{h.half} empire")
    sheet = sheet.sew(replace(seam, right=seam.right[:1]))
    outer = replace(sheet.edge(code, "waist 2"), name="waist side")
    return redraw(sheet, code, ["waist 2"], [outer])

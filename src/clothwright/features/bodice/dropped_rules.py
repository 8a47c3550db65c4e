"""Numbers of a torso that is cut across by a seam below the waist (blocks D7).

The seam lies level, at the waist or at the hip or between; what a half measures there
is read off the lines of the torso. Half body, cm; back widths from the centre back,
front widths from the centre front.
"""

from collections.abc import Collection

from clothwright.blocks import torso
from clothwright.blocks.torso_rules import BELOW_HIP, FROM_HIP, zip_end
from clothwright.curves import Cubic, Path, Point, Vector
from clothwright.paper import meetings
from clothwright.rules import RuleError, RuleTable

_D7 = "blocks D7"

PASSES = 1.0
"""A dart that is narrower at the seam is ended above it, cm (common practice, no
source; a skirt has none narrower, C13)."""

ABOVE = 1.5
"""Such a dart ends so far above the seam, cm (common practice, no source)."""

SHORTEST = 5.0
"""A dart is not made shorter than this below the waist, cm: it would pucker (common
practice, no source)."""

DROPPED = RuleTable("torso with a seam below the waist")
HUNG = RuleTable("torso to which a skirt is sewn below the waist")
FRONT_PANELLED = RuleTable("front panels of a torso at its seam")
BACK_PANELLED = RuleTable("back panels of a torso at its seam")
_rule = DROPPED.rule


def _level(y: float) -> Path:
    return Path.line(Point(-200.0, y), Point(300.0, y))


def _across(line: Path, y: float) -> float:
    """Where a line crosses a level, cm from the centre."""
    fault = (
        "a line of the torso does not reach the seam below the waist: lay the seam "
        "(dd) higher, or measure WH again"
    )
    return line.at_length(meetings(line, _level(y), fault)[0][0]).x


def side_at(
    top: float,
    waist: float,
    shift: float,
    hip: float,
    down: float,
    WH: float,
    y: float,
) -> float:
    """Half width at the side `y` below the waist: on the torso's line from the
    underarm, `top` from the centre and `down` above, through the waist, moved out by
    `shift`, into the plumb at the hip."""
    foot = Point(hip, WH)
    line = torso.side_line(
        Path.line(Point(top, -down), Point(waist, 0.0)),
        Point(waist + shift, 0.0),
        foot,
        Path.line(foot, foot + Vector(0.0, 1.0)),
    )
    return _across(line, y)


def eased(wide: float, deep: float, y: float) -> float:
    """What is left at `y` of a width that runs out over `deep`, plumb at both ends, as
    a panel seam and a centre back are drawn."""
    if y >= deep:
        return 0.0
    reach = Vector(0.0, 0.4 * deep)
    start, end = Point(wide, 0.0), Point(0.0, deep)
    return _across(Path((Cubic(start, start + reach, end - reach, end),)), y)


@_rule(
    "x seam",
    "back half width at the seam below the waist",
    source=_D7,
    key="x_seam",
    formula="on the torso's side line, dd below the waist",
)
def _x_seam(
    xs: float,
    a: float,
    side_shift: float,
    xh: float,
    yW: float,
    yB: float,
    WH: float,
    dd: float,
) -> float:
    if dd > WH + 1e-9:
        raise RuleError(
            f"the seam of the torso (dd) lies {dd:.1f} cm below the waist, under the "
            f"hip (WH): make it {WH:.1f} cm at most"
        )
    return side_at(xs, xs - a, side_shift, xh, yW - yB, WH, dd)


@_rule(
    "x seam front",
    "front half width at the seam below the waist",
    source=_D7,
    key="x_seam_f",
    formula="on the torso's side line, dd below the waist",
)
def _x_seam_front(
    front_half: float,
    a: float,
    side_shift: float,
    xh_f: float,
    yW: float,
    yB: float,
    WH: float,
    dd: float,
) -> float:
    return side_at(front_half, front_half - a, -side_shift, xh_f, yW - yB, WH, dd)


@_rule(
    "x(CB) seam",
    "centre back at the seam below the waist",
    source=_D7,
    key="x_back_s",
    formula="on the centre back seam, dd below the waist",
)
def _x_back(x_back: float, WH: float, dd: float) -> float:
    return eased(x_back, WH, dd)


def _dart(dart: str, half: str, width: str, long: str, table: RuleTable) -> None:
    """What a dart of a half takes in at the seam, and of a panel seam."""
    name = f"{half} dart at the seam below the waist"

    @_rule(
        f"{dart} seam",
        name,
        source=_D7,
        key=f"{dart}_s",
        formula=f"{dart} as it runs out below the waist",
        needs=(width, long, "dd"),
    )
    def _straight(wide: float, deep: float, y: float) -> float:
        return wide * max(0.0, 1.0 - y / deep)

    @table.rule(
        f"{dart} seam",
        f"{half} panel seam at the seam below the waist",
        source=_D7,
        key=f"{dart}_s",
        formula=f"{dart} as the panels run out below the waist",
        needs=(width, long, "dd"),
    )
    def _panels(wide: float, deep: float, y: float) -> float:
        return eased(wide, deep, y)


_dart("fd", "front", "fd", "lf_T", FRONT_PANELLED)
_dart("bd", "back", "bd_net", "lb_T", BACK_PANELLED)


def run_out(usual: float, wide: float, dd: float) -> float:
    """How far below the waist a dart of this width ends: as usual when it passes the
    seam or ends clear above it, else short of the seam."""
    if usual <= dd - ABOVE or wide * (1.0 - dd / usual) >= PASSES:
        return usual
    return dd - ABOVE if dd - ABOVE >= SHORTEST else usual


def _ends(key: str, symbol: str, half: str, usual: float, width: str) -> None:
    @_rule(
        symbol,
        f"{half} dart below the waist",
        source="blocks D4, common practice, no source",
        key=key,
        formula=f"{usual:g} cm, but ending 2.5 cm above the hip; where under 1 cm of "
        "it would be left at the seam, ending 1.5 cm above that",
        low=5.0,
        high=20.0,
        needs=(width, "WH", "dd"),
    )
    def _length(wide: float, WH: float, dd: float) -> float:
        return run_out(min(usual, WH - FROM_HIP), wide, dd)


_ends("lb_T", "lb", "back", 13.5, "bd_net")
_ends("lf_T", "lf", "front", 9.5, "fd")


@_rule(
    "wF",
    "front at the seam below the waist, half",
    source=_D7,
    key="w_F",
    formula="x seam front − fd seam",
)
def _w_front(x_seam_f: float, fd_s: float) -> float:
    return x_seam_f - fd_s


@_rule(
    "wB",
    "back at the seam below the waist, half",
    source=_D7,
    key="w_B",
    formula="x seam − x(CB) seam − bd seam",
)
def _w_back(x_seam: float, x_back_s: float, bd_s: float) -> float:
    return x_seam - x_back_s - bd_s


@_rule(
    "ew",
    "torso eased onto the skirt, each half",
    source=_D7,
    key="ew",
    formula="none",
)
def _no_ease() -> float:
    return 0.0


# -- a skirt that is sewn on -----------------------------------------------------------
@HUNG.rule(
    "hem T",
    "level of the end of the torso's paper below the hip",
    source=_D7,
    key="below_hip",
    formula="2 cm: it is cut off at the seam",
)
def _below() -> float:
    return BELOW_HIP


@HUNG.rule(
    "L T",
    "length of the torso's paper from the waist",
    source=_D7,
    key="L_T",
    formula="WH + hem T",
)
def _paper(WH: float, below_hip: float) -> float:
    return WH + below_hip


@HUNG.rule(
    "room",
    "skirt at the high hip, all round",
    source="first garment 13.5",
    formula="girth below its seam + flare·(WHH − dd), where that lies above",
)
def room(w_below: float, flare: float, WHH: float, dd: float) -> float:
    return w_below + flare * max(0.0, WHH - dd)


@HUNG.rule(
    "fl",
    "out at the hem, each side",
    source=_D7,
    key="fl_T",
    formula="none: the paper is cut off at the seam",
)
def _plumb() -> float:
    return 0.0


_CLEAR = 3.0
"""A zip ends at least so far from a seam that it crosses, cm (common practice, no
source)."""


def clear_of_seam(end: float, seam: float, most: float) -> float:
    """Where a zip ends below the waist: as it would, but clear of a seam there; below
    it where that is not deeper than `most`."""
    if abs(end - seam) >= _CLEAR:
        return end
    return seam + _CLEAR if seam + _CLEAR <= most else seam - _CLEAR


HUNG_ZIP_END = RuleTable("zip of a torso with a seam below the waist")
OWN_ZIP_END = RuleTable("zip of a torso with its own skirt below a seam")


def _zip_end(table: RuleTable, below_seam: bool) -> None:
    """As that of a torso without a seam, on the body, but clear of the seam; `L` is
    counted from the seam or from the waist."""

    @table.rule(
        "z",
        "end of the zip below the waist",
        source="transformations §7",
        formula="WH − 2 cm, and 2 cm above the hem, but 3 cm clear of the seam",
        low=0.0,
        high=25.0,
    )
    def z(WH: float, L: float, dd: float) -> float:
        reach = dd + L if below_seam else L
        return clear_of_seam(zip_end(WH, reach), dd, reach - 2.0)


_zip_end(HUNG_ZIP_END, below_seam=True)
_zip_end(OWN_ZIP_END, below_seam=False)


def panelled(rules: Collection[str]) -> RuleTable:
    """What halves in panels take in at the seam; `rules` are the keys of all."""
    found = RuleTable("panels of a torso at its seam")
    for key, table in (
        ("R_bust", FRONT_PANELLED),
        ("x_Z", BACK_PANELLED),
        ("share_s", BACK_PANELLED),
    ):
        if key in rules:
            found.rules.update(table.rules)
    return found

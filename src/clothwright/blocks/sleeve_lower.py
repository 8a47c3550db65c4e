"""The sleeve below the biceps line: straight, or bent forward at the elbow.

Blocks B9 to B12 of our notes on common flat-cutting practice, with correction C10.
Lengths in cm; axes as in `blocks.sleeve`.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Path, Point, Vector, direction, distance, unit
from clothwright.rules import RuleError, RuleTable

ELBOW = RuleTable("level of the elbow")
BENT = RuleTable("sleeve bent at the elbow")
_rule = BENT.rule
_SRC = "blocks B9 to B12, corrections C10"

LEAST_BELOW = 4.0
"""A sleeve that is bent at the elbow goes on so far below it at least, cm."""

EASED = 1.2
"""The longer back seam is eased in at the elbow up to here, cm; more is a dart (B11).
"""


NO_DART = 0.5
"""Less than this is no dart at the elbow, cm; it is eased in."""


@dataclass(frozen=True)
class Lower:
    """The sleeve below the biceps line: both seams and the hem, from above."""

    front: Path
    """Front underarm to the front end of the hem."""

    back_above: Path
    """Back underarm to the elbow."""

    back_below: Path
    """Elbow to the back end of the hem."""

    centre: Point
    """Centre of the hem, on the bent centre line."""

    down: Vector
    """Unit direction of the centre line below the elbow."""

    @property
    def longer(self) -> float:
        """What the back seam is longer than the front, cm."""
        return self.back_above.length + self.back_below.length - self.front.length

    @property
    def hem(self) -> Path:
        """The hem from front to back, square to both seams and to the centre line."""
        ends = (
            (self.front.end, self.front.end_direction),
            (
                self.back_below.end,
                self.back_below.end_direction,
            ),
        )
        towards_back = Vector(-self.down.y, self.down.x)
        (f, f_way), (b, b_way) = ends
        first = 0.36 * distance(f, self.centre)
        last = 0.36 * distance(b, self.centre)
        square_f, square_b = Vector(-f_way.y, f_way.x), Vector(-b_way.y, b_way.x)
        return Path.cubic(
            f,
            f + square_f * first,
            self.centre - towards_back * first,
            self.centre,
        ) + Path.cubic(
            self.centre,
            self.centre + towards_back * last,
            b - square_b * last,
            b,
        )


@lru_cache(maxsize=256)
def lower_sleeve(
    b_F: float,
    b_B: float,
    y_E: float,
    We: float,
    hem: float,
    below: float,
    swing: float,
) -> Lower:
    """The lower sleeve of half widths `b_F`, `b_B` at the biceps line, `We` at the
    elbow, `y_E` below it, and `hem` at the hem, `below` the elbow along the centre line
    that swings `swing` towards the front (C10). The wrist line is square to the centre
    line, 1 cm longer behind; its ends are lowered so that it meets both seams square.
    """
    centre_e = Point(0.0, y_E)
    centre = Point(swing, y_E + math.sqrt(below**2 - swing**2))
    down = direction(centre_e, centre)
    front = Vector(down.y, -down.x)  # along the wrist line, towards the front
    ef, eb = Point(We / 2, y_E), Point(-We / 2, y_E)

    def end(elbow: Point, side: float) -> Point:
        at = centre + front * side
        way = direction(elbow, at)
        lean = abs(way.x * front.x + way.y * front.y) / (
            way.x * down.x + way.y * down.y
        )
        return at + down * (0.5 * abs(side) * lean)

    hf, hb = end(ef, hem / 2 - 0.5), end(eb, -(hem / 2 + 0.5))
    uf, ub = Point(b_F, 0.0), Point(-b_B, 0.0)
    above_f, below_f = _bent(uf, ef, hf)
    above_b, below_b = _bent(ub, eb, hb)
    return Lower(above_f + below_f, above_b, below_b, centre, down)


def _bent(u: Point, elbow: Point, hem: Point) -> tuple[Path, Path]:
    """A seam from the underarm, which it leaves plumb, over the elbow to the hem."""
    at_elbow = unit(direction(u, elbow) + direction(elbow, hem))
    first, last = distance(u, elbow), distance(elbow, hem)
    above = Path.cubic(
        u, u + Vector(0.0, 0.3 * first), elbow - at_elbow * (0.3 * first), elbow
    )
    way = direction(elbow, hem)
    below = Path.cubic(
        elbow, elbow + at_elbow * (0.25 * last), hem - way * (0.3 * last), hem
    )
    return above, below


UPPER_ARM = 12.0
"""So far below the biceps line the arm is as full as there, cm (our ruling)."""


def arm_girth(under_arm: float, y_E: float, UA: float, EL: float) -> float:
    """Girth of the arm `under_arm` below the biceps line, down to the elbow: UA, from
    where it tapers on evenly to EL."""
    share = (under_arm - UPPER_ARM) / max(y_E - UPPER_ARM, 1.0)
    return UA + (EL - UA) * clip(share, 0.0, 1.0)


@ELBOW.rule(
    "elbow ↓",
    "elbow that a fitting lowers",
    source="cutting and costing 6",
    key="elbow_down",
    formula="none",
)
def _lowered() -> float:
    return 0.0


@ELBOW.rule(
    "yE",
    "elbow below the biceps line",
    source="blocks B9",
    key="y_E",
    formula="SE − h + 0.5 cm, and what a fitting lowers it",
    low=5.0,
    high=40.0,
)
def _elbow(SE: float, h_cap: float, elbow_down: float) -> float:
    return SE - h_cap + 0.5 + elbow_down


@_rule(
    "below",
    "length of the sleeve below the elbow",
    source=_SRC,
    key="below_elbow",
    formula="lh − h − yE",
)
def _below(under_arm: float, y_E: float, h_cap: float) -> float:
    if under_arm - y_E < LEAST_BELOW - 1e-6:
        least = math.ceil(10 * (h_cap + y_E + LEAST_BELOW) + 1) / 10
        raise RuleError(
            f"a sleeve of {under_arm + h_cap:.1f} cm ends above the elbow or just "
            f"below it; to be shaped there it needs a length of {least:.1f} cm or "
            'more, or set elbow to "straight"'
        )
    return under_arm - y_E


@_rule(
    "Ww",
    "width of the sleeve at the wrist",
    source="blocks B10",
    formula="the greater of WR + 3.5 cm and HD + 0.5 cm",
    low=12.0,
    high=50.0,
)
def Ww(WR: float, HD: float) -> float:
    return max(WR + 3.5, HD + 0.5)


@_rule(
    "We",
    "width of the sleeve at the elbow",
    source=_SRC,
    formula="EL + 2.5 cm, or what straight seams leave there where that is more, and "
    "what a fitting adds",
    low=18.0,
    high=60.0,
)
def We(
    EL: float,
    Wb: float,
    Ww: float,
    y_E: float,
    AL: float,
    h_cap: float,
    elbow_more: float,
) -> float:
    share = y_E / max(AL - h_cap, y_E + 1.0)
    return max(EL + 2.5, Wb + (Ww - Wb) * share) + elbow_more


@_rule(
    "hem width",
    "hem of the sleeve",
    source=_SRC,
    key="hem_sleeve",
    formula="from We at the elbow to Ww at the wrist, as far down as the sleeve goes",
)
def _hem(We: float, Ww: float, below_elbow: float, AL: float, SE: float) -> float:
    whole = AL - SE - 0.5
    return We + (Ww - We) * min(1.0, below_elbow / whole)


@_rule(
    "swing",
    "swing of the sleeve's end towards the front",
    source=_SRC,
    formula="1.75 cm at the wrist, less on a shorter sleeve",
    low=0.0,
    high=4.0,
)
def swing(below_elbow: float, AL: float, SE: float) -> float:
    return 1.75 * min(1.0, below_elbow / (AL - SE - 0.5))


@_rule(
    "elbow dart",
    "what the back seam is longer, taken in at the elbow",
    source="blocks B11",
    key="elbow_in",
    formula="back seam less front seam, as drawn",
)
def _elbow_in(
    b_F: float,
    b_B: float,
    y_E: float,
    We: float,
    hem_sleeve: float,
    below_elbow: float,
    swing: float,
) -> float:
    return lower_sleeve(b_F, b_B, y_E, We, hem_sleeve, below_elbow, swing).longer


@_rule(
    "elbow ease",
    "what is eased in at the elbow",
    source="blocks B11",
    key="elbow_ease",
    formula="what is too little for a dart: under 0.5 cm",
)
def _rest(elbow_in: float) -> float:
    return elbow_in if elbow_in < NO_DART else 0.0


@_rule(
    "elbow dart length",
    "length of the elbow dart",
    source="blocks B11",
    key="elbow_depth",
    formula="7.5 cm, but to half of the back elbow width at most",
    low=4.0,
    high=12.0,
)
def _depth(We: float) -> float:
    return min(7.5, We / 4)


WIDTHS = RuleTable(
    "widths at wrist, elbow and hem",
    {key: BENT.rules[key] for key in ("Ww", "We", "hem_sleeve")},
)
"""The widths of a bent sleeve alone."""

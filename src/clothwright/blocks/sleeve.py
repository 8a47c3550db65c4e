"""The cap of a set-in sleeve, solved to the armhole that it is set into.

Blocks B1 to B8 of our notes on common flat-cutting practice, with corrections C3, A10
and A11. Lengths in cm, angles in degrees; the biceps line lies at y = 0, x runs towards
the front, the top of the cap T is (0, −h).
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from clothwright.blocks.trial import by_trial
from clothwright.curves import Cubic, Path, Point, Vector, distance, mirror_in, mix
from clothwright.paper import Drafting
from clothwright.rules import Kind, Numbers, RuleError, RuleTable, unfitted

SLEEVE = RuleTable("set-in sleeve")
RAISED_EASE = RuleTable("ease of the upper arm for a cap that is not too high")
PLAIN = RuleTable("sleeve without fullness")
_rule = SLEEVE.rule
_SRC = "blocks B"

EASE_FRONT, EASE_BACK = 0.45, 0.55
"""Shares of the cap ease (B4)."""

HIGHEST = 0.36
"""The cap is at most this share of the armhole high (B5)."""

EVEN = 0.44, 0.53
"""The front's share of the biceps width, within which each half of the cap is solved
to its own half of the armhole (B6)."""


@dataclass(frozen=True)
class HalfShape:
    """How half a cap runs: where its hollow ends, and the handles there (B3, C3)."""

    bend: float
    """Where the hollow turns into the crown, share of the way from U to T."""

    foot: float
    """Handle at the underarm, share of the hollow's chord."""

    crown: float
    """Handle at T, share of the crown's chord."""


FRONT = HalfShape(0.50, 0.40, 0.42)
BACK = HalfShape(0.40, 0.38, 0.38)
_STEEPER = math.radians(22)
"""The cap is this much steeper where it bends over than the line from U to T (C3)."""


def half_cap(width: float, height: float, shape: HalfShape) -> Path:
    """Half a cap from the underarm (width, 0) to the top (0, −height), level at both
    ends (B3). The back half is this one mirrored."""
    u, t = Point(width, 0.0), Point(0.0, -height)
    bend = mix(u, t, shape.bend)
    steep = math.atan2(height, width) + _STEEPER
    along = Vector(-math.cos(steep), -math.sin(steep))
    hollow, crown = distance(u, bend), distance(bend, t)
    return Path(
        (
            Cubic(
                u,
                u - Vector(shape.foot * hollow, 0.0),
                bend - along * (0.33 * hollow),
                bend,
            ),
            Cubic(
                bend,
                bend + along * (0.36 * crown),
                t + Vector(shape.crown * crown, 0.0),
                t,
            ),
        )
    )


@dataclass(frozen=True)
class Cap:
    """A solved cap: its height, the width of its front half, and what that half is
    longer than its share, which moves the shoulder notch off T (A11). All cm."""

    height: float
    front: float
    over: float


@lru_cache(maxsize=256)
def solve_cap(Wb: float, Af: float, Ab: float, E: float) -> Cap | None:
    """The cap of biceps width `Wb` and ease `E` for an armhole `Af` + `Ab` (B4, B6);
    None when there is none.

    Both halves are solved to their own half of the armhole. Where that would lay the
    centre too far aside, the front gets 0.49 of the width, the whole cap is solved to
    the whole armhole and the shoulder notch moves (A10).
    """
    front, back = Af + EASE_FRONT * E, Ab + EASE_BACK * E
    whole = front + back
    if whole <= Wb:
        return None
    # a cap is longer than its chords, and hardly longer than its height and width
    low = 0.4 * (whole - Wb)
    high = math.sqrt(whole**2 - Wb**2) / 2

    def over_width(height: float) -> float:
        return _beside(height, front, FRONT) + _beside(height, back, BACK) - Wb

    height = by_trial(over_width, low, high)
    if height is not None:
        width = _beside(height, front, FRONT)
        if EVEN[0] <= width / Wb <= EVEN[1]:
            return Cap(height, width, 0.0)
    width = 0.49 * Wb

    def halves(height: float) -> tuple[float, float]:
        return (
            half_cap(width, height, FRONT).length,
            half_cap(Wb - width, height, BACK).length,
        )

    height = by_trial(lambda h: sum(halves(h)) - whole, low, high)
    if height is None:
        return None
    return Cap(height, width, halves(height)[0] - front)


@lru_cache(maxsize=256)
def turned_cap(Wb: float, Af: float, Ab: float, E: float, turn: float) -> Cap | None:
    """The same cap, its top moved `turn` cm forward along it from where it would stand
    (cutting and costing 6); None when there is none."""
    cap = solve_cap(Wb, Af, Ab, E)
    if cap is None or turn == 0.0:
        return cap
    front = half_cap(cap.front, cap.height, FRONT).length - turn
    back = half_cap(Wb - cap.front, cap.height, BACK).length + turn

    def over_width(height: float) -> float:
        return _beside(height, front, FRONT) + _beside(height, back, BACK) - Wb

    height = by_trial(over_width, 0.7 * cap.height, 1.2 * cap.height)
    if height is None:
        return None
    return Cap(height, _beside(height, front, FRONT), cap.over - turn)


def _beside(height: float, length: float, shape: HalfShape) -> float:
    """Width of the half cap of this height and length; 0 when it is too high."""

    def over(width: float) -> float:
        return half_cap(width, height, shape).length - length

    least, most = 1e-3, math.sqrt(max(0.0, length**2 - height**2))
    near = 0.8 * (length - height)
    if most <= least:
        return 0.0
    return by_trial(over, near if over(near) < 0 else least, most) or 0.0


def _solved(Wb: float, A_f: float, A_b: float, E_cap: float, turn: float) -> Cap:
    cap = turned_cap(Wb, A_f, A_b, E_cap, turn)
    if cap is None:
        raise RuleError(
            f"no cap for a sleeve {Wb:.1f} cm wide fits an armhole of "
            f"{A_f + A_b:.1f} cm: measure the upper arm (UA) again, or alter the depth "
            "of the armhole"
        )
    return cap


@RAISED_EASE.rule(
    "e",
    "ease of the upper arm",
    source=f"{_SRC}5, corrections A13",
    key="e_arm",
    formula="e usual, raised by 0.25 cm until h is at most 0.36·A, to 8 cm at most",
    low=1.0,
    high=14.0,
)
def _raised(e_usual: float, UA: float, A_f: float, A_b: float, E_cap: float) -> float:
    ease = e_usual
    while ease < 8.0:
        cap = solve_cap(UA + ease, A_f, A_b, E_cap)
        if cap is not None and cap.height <= HIGHEST * (A_f + A_b):
            break
        ease = min(ease + 0.25, 8.0)
    return ease


@_rule("A", "armhole", source=f"{_SRC}", formula="Af + Ab", key="A_hole")
def _armhole(A_f: float, A_b: float) -> float:
    return A_f + A_b


@_rule(
    "Wb",
    "biceps width of the sleeve",
    source=f"{_SRC}1",
    formula="UA + e, and what a fitting adds",
)
def Wb(UA: float, e_arm: float, arm_more: float) -> float:
    return UA + e_arm + arm_more


@_rule(
    "h",
    "height of the cap",
    source=f"{_SRC}4, corrections C3",
    key="h_cap",
    formula="found so that each half of the cap is as long as its armhole and ease",
    low=4.0,
    high=25.0,
)
def _height(Wb: float, A_f: float, A_b: float, E_cap: float, head_turn: float) -> float:
    return _solved(Wb, A_f, A_b, E_cap, head_turn).height


@_rule(
    "bF",
    "front half of the biceps width",
    source=f"{_SRC}4, B6",
    key="b_F",
    formula="found with h; 0.49·Wb when it would leave 0.44 to 0.53 of Wb",
)
def _front(Wb: float, A_f: float, A_b: float, E_cap: float, head_turn: float) -> float:
    return _solved(Wb, A_f, A_b, E_cap, head_turn).front


@_rule(
    "bB",
    "back half of the biceps width",
    source=f"{_SRC}2",
    key="b_B",
    formula="Wb − bF",
)
def _back(Wb: float, b_F: float) -> float:
    return Wb - b_F


@_rule(
    "h/A",
    "height of the cap, share of the armhole",
    kind=Kind.RATIO,
    source=f"{_SRC}5",
    key="h_share",
    formula="h/A",
)
def _share(h_cap: float, A_hole: float) -> float:
    return h_cap / A_hole


@_rule(
    "notch",
    "shoulder notch from the top of the cap, towards the front",
    source=f"{_SRC}6, corrections A11",
    key="cap_over",
    formula="what the front half of the cap is longer than Af + 0.45·E",
)
def _over(Wb: float, A_f: float, A_b: float, E_cap: float, head_turn: float) -> float:
    return _solved(Wb, A_f, A_b, E_cap, head_turn).over


@_rule(
    "cap back",
    "back half of the cap, underarm to shoulder notch",
    source=f"{_SRC}4, corrections A11",
    key="cap_back",
    formula="Ab + 0.55·E",
)
def _cap_back(A_b: float, E_cap: float) -> float:
    return A_b + EASE_BACK * E_cap


def _altered(key: str, symbol: str, name: str) -> None:
    @_rule(symbol, name, key=key, source="cutting and costing 6", formula="none")
    def _none() -> float:
        return 0.0


_altered("arm_more", "arm +", "biceps width that a fitting adds")
_altered("head_turn", "turn", "top of the cap before the shoulder notch, at a fitting")
_altered("elbow_more", "elbow +", "width at the elbow that a fitting adds")
ALTERED = ("arm_more", "head_turn", "elbow_more", "elbow_down")
"""Numbers that only a fitting changes."""


def before_fitting(n: Numbers) -> Numbers:
    """The numbers of the sleeve as they were before it was altered at a fitting, if it
    was; an altered bodice alone is its armhole."""
    return n.unfitted if any(unfitted(k) in n for k in ALTERED) else n


@PLAIN.rule(
    "elbow ease",
    "what is eased in at the elbow",
    source=f"{_SRC}11",
    key="elbow_ease",
    formula="none on a straight sleeve",
)
def _no_elbow() -> float:
    return 0.0


@PLAIN.rule(
    "puff",
    "opening of the cap for gathers",
    source="transformations 4",
    key="puff",
    formula="none",
)
def _no_puff() -> float:
    return 0.0


@PLAIN.rule(
    "end",
    "width of what is sewn to the end of the sleeve",
    source="transformations 4",
    key="end_depth",
    formula="none",
)
def _no_end() -> float:
    return 0.0


@PLAIN.rule(
    "blouse sl",
    "length of the sleeve that blouses over its band",
    source="transformations 4",
    key="sleeve_blouse",
    formula="none",
)
def _no_sleeve_blouse() -> float:
    return 0.0


def draft_cap(d: Drafting) -> Path:
    """Draw the cap, back underarm Ub over T to front underarm Uf; mark K, where the
    shoulder seam meets it. The path runs from Ub to Uf."""
    d.part = "sleeve"
    d.start("Os", Point(0.0, 0.0), "the centre of the sleeve, on its biceps line")
    t = d.point("T", "Os", "top of the cap", up="h_cap")
    uf = d.point("Uf", "Os", "front underarm of the sleeve", right="b_F")
    ub = d.point("Ub", "Os", "back underarm of the sleeve", left="b_B")
    d.found(
        "If",
        mix(uf, t, FRONT.bend),
        "where the front of the cap turns from hollow to crown",
        detail="half way from Uf to T",
    )
    d.found(
        "Ib",
        mix(ub, t, BACK.bend),
        "where the back of the cap turns from hollow to crown",
        detail="two fifths of the way from Ub to T",
    )
    height, front, back = d.n.h_cap, d.n.b_F, d.n.b_B
    left = half_cap(back, height, BACK).moved(mirror_in(d["Os"], t))
    right = half_cap(front, height, FRONT).reversed()
    cap = d.draw(
        "cap",
        left + right,
        "cap of the sleeve",
        frm=("Ub", "Ib", "T", "If", "Uf"),
        detail="level at Ub, T and Uf, and at Ib and If 22° steeper than the lines "
        "from T to Ub and Uf",
    )
    d.found(
        "K",
        cap.at_length(d.n.cap_back),
        "where the shoulder seam meets the cap",
        amounts=(("along the cap from Ub", "cap_back"),),
    )
    return cap

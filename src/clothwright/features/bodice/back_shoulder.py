"""What becomes of the back shoulder dart: ease, or a dart led to panel, neck or seam.

First garment 6.1 and 7.3: the modes, with their rules, needs and checks. The paper is
cut and taped in `back_dart`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum

from clothwright.blocks.back_shoulder_dart import closing
from clothwright.curves import cross, direction, distance
from clothwright.features.base import Rank, Stage
from clothwright.features.bodice.back_dart import (
    ABOUT_POINT,
    close_about_panel,
    lead_to_neck,
    lead_to_yoke,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers, RuleTable

_SRC = "first garment 6.1"

NARROW_NECK = 2.5
"""A neck widened by less than this may have a dart in the shoulder seam, cm (7.3)."""


class BackShoulder(Enum):
    """How the back shoulder is shaped over the blade."""

    BY_STYLE = "by the style"
    """Nothing beside an open back, a dart in a shoulder princess's seam, else ease."""

    NONE = "none"
    """A little ease: the blade is cut away, or the neck is wider than half."""

    EASE = "ease"
    """More ease, for cloth that eases."""

    TO_PANEL = "to panel"
    """A dart, closed; it opens the panel line at the armhole."""

    NECK = "neck"
    """A dart, led to the neck."""

    YOKE = "yoke"
    """A dart, closed in a back yoke; the yoke's seam opens at the armhole."""

    SEAM = "seam"
    """A dart in the panel seam from the shoulder."""


PLAIN = RuleTable("back shoulder")
CLOSED_BACK = RuleTable("back shoulder of a closed back")
TO_PANEL = closing("back shoulder dart closed into the panel", "x_Z", "y_Z", "Z")
AT_ITS_POINT = closing("back shoulder dart closed", "x_Ps", "y_Ps", "Ps")


@PLAIN.rule(
    "sd",
    "back shoulder dart",
    key="sd",
    source=f"first garment 2.3, {_SRC}",
    formula="none",
    low=0.0,
    high=2.0,
)
def _no_dart() -> float:
    return 0.0


@PLAIN.rule(
    "se",
    "ease of the back shoulder",
    key="se",
    source="first garment 2.3",
    formula="0.5 cm",
    low=0.0,
    high=1.2,
)
def _little_ease() -> float:
    return 0.5


@CLOSED_BACK.rule(
    "se",
    "ease of the back shoulder",
    key="se",
    source=f"{_SRC}, blocks A2.3",
    formula="0.6 cm; 0.5 cm with a dart, or with a neck of half the shoulder and more",
    low=0.0,
    high=1.2,
)
def _ease(sd: float, dw: float, S: float) -> float:
    return 0.6 if sd <= 0 and dw < S / 2 - 1e-6 else 0.5


# -- checking it -----------------------------------------------------------------------
TIP_MOVES, SHOULDER_MOVES = 0.25, 0.5
"""Most that truing moves the tip along the shoulder, and paper at its middle, cm."""


def shoulder_findings(n: Numbers, sheet: Sheet, way: BackShoulder) -> Iterator[Finding]:
    """Truing over a closed dart moved no more paper than is hidden (6.1)."""
    p = sheet.points
    if "tb′" not in p:
        return
    moved = abs(distance(p["hb"], p["tb′"]) - (n.SH + n.se))
    if moved > TIP_MOVES:
        yield Finding(
            "D1",
            Severity.REFUSE,
            f"Closing the back shoulder dart leaves the shoulder {moved:.2f} cm off "
            f"its length; up to {TIP_MOVES} cm is trued at the tip.",
            "sd",
            "Make the back shoulder dart smaller.",
            {"moved": moved},
        )
    off = abs(cross(direction(p["hb"], p["tb′"]), p["D1s"] - p["hb"]))
    if way is BackShoulder.TO_PANEL and off > SHOULDER_MOVES:
        yield Finding(
            "D2",
            Severity.REFUSE,
            f"Closing the back shoulder dart bends the shoulder by {off:.2f} cm at its "
            f"middle; up to {SHOULDER_MOVES} cm is ruled straight.",
            "sd",
            "Make the back shoulder dart smaller.",
            {"moved": off},
        )


# -- the modes -------------------------------------------------------------------------
@dataclass(frozen=True)
class Way:
    """What a mode brings with it."""

    dart: float | None = None
    """Usual width of the dart, cm; None where a rule gives it."""

    ease: float | None = None
    """Usual ease, cm."""

    tables: tuple[RuleTable, ...] = ()
    stages: tuple[Stage, ...] = ()
    wants: Mapping[str, str] = field(default_factory=dict)
    forbids: Mapping[str, str] = field(default_factory=dict)


_CLOSED = {
    "open back": "an open back cuts the blade away, so its shoulder takes "
    'back_shoulder = "none"',
    "strapless": "a strapless bodice has no shoulder for a dart or ease: leave "
    "back_shoulder out",
}
WAYS: Mapping[BackShoulder, Way] = {
    BackShoulder.BY_STYLE: Way(),
    BackShoulder.NONE: Way(0.0, 0.5),
    BackShoulder.EASE: Way(0.0, 0.6, forbids=_CLOSED),
    BackShoulder.TO_PANEL: Way(
        0.8,
        0.5,
        (TO_PANEL,),
        (Stage(Rank.BACK_SHOULDER, "the back shoulder dart", close_about_panel),),
        {
            "back armhole line": "the back shoulder dart goes to the panel only with a "
            "back armhole princess; add one"
        },
        _CLOSED,
    ),
    BackShoulder.NECK: Way(
        1.2,
        0.5,
        (AT_ITS_POINT,),
        (ABOUT_POINT, Stage(Rank.BACK_DART, "the back neck dart", lead_to_neck)),
        {},
        {
            **_CLOSED,
            "shoulder line": "a shoulder princess takes the back shoulder dart in its "
            'seam; write back_shoulder = "seam"',
        },
    ),
    BackShoulder.YOKE: Way(
        0.8,
        0.5,
        (AT_ITS_POINT,),
        (ABOUT_POINT, Stage(Rank.BACK_DART, "the dart of the yoke", lead_to_yoke)),
        {
            "back yoke": "the back shoulder dart goes to a yoke only where there is "
            'one: add a "back yoke"'
        },
        {
            **_CLOSED,
            "shoulder line": "a shoulder princess takes the back shoulder dart in its "
            'seam; write back_shoulder = "seam"',
            "back armhole line": "the back princess line takes the back shoulder dart "
            'under a yoke too; write back_shoulder = "to panel"',
            "lining": "a lining is not yet cut for a back whose yoke takes the dart: "
            'set back_shoulder = "ease", or leave the lining off',
        },
    ),
    BackShoulder.SEAM: Way(
        None,
        0.5,
        wants={
            "shoulder line": "only a shoulder princess takes the back shoulder dart "
            "in its seam; add one"
        },
        forbids=_CLOSED,
    ),
}
"""Usual dart and ease: 6.1, 7.3, blocks A2.3."""

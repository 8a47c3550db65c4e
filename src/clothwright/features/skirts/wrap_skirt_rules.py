"""Numbers of a wrap skirt: how far its fronts cross, its band and its ties, cm.

Our notes have the crossing of a bodice's wrap alone (transformations 2); what they do
not say is common practice and marked so.
"""

from clothwright.blocks.skirt_darts import FRONT_PLACES
from clothwright.features.base import Number
from clothwright.rules import RuleError, RuleTable

SRC = "common practice, no source"

BEYOND, LEAST, BEFORE_SIDE = 5.0, 12.0, 1.5
"""The edge lies so far beyond the last dart of the other front, so far beyond the
centre at least, and so far before the other side, cm."""

BEFORE_MOUTH, CLEAR_OF_DART = 1.0, 1.2
"""It ends so far before a slanting pocket of the other front, and so far beside a dart
that it does not pass, cm (our own)."""

BESIDE = 0.7
"""A facing beside the edge keeps so far from a dart, cm."""

BOW = Number(
    "bow",
    "bow",
    "length of each tie for its bow",
    SRC,
    45.0,
    18.0,
    20.0,
    90.0,
    (35.0, 60.0),
)

WRAP_SKIRT = RuleTable("wrap skirt")
FACED = RuleTable("wrap skirt with faced edges")
_rule = WRAP_SKIRT.rule


def last_dart(w_SF: float, nf_S: float) -> float:
    """The last dart of a front from its centre, along the waist with the darts shut,
    cm; nought without one."""
    count = round(nf_S)
    return FRONT_PLACES[count - 1][-1] * w_SF if count else 0.0


@_rule(
    "wx S",
    "crossing of the centre front by each front of a wrap skirt",
    source=f"transformations 2, {SRC}",
    key="wx_S",
    formula="5 cm beyond the last dart of the other front, 12 cm at least, ending "
    "1.5 cm before the side",
    low=8.0,
    high=30.0,
)
def _crossing(w_SF: float, nf_S: float) -> float:
    return min(max(LEAST, last_dart(w_SF, nf_S) + BEYOND), w_SF - BEFORE_SIDE)


BEFORE_POCKET = RuleTable("wrap skirt with slanting pockets")


@BEFORE_POCKET.rule(
    "wx S",
    "crossing of the centre front by each front of a wrap skirt",
    source=f"transformations 2, {SRC}",
    key="wx_S",
    formula="as far as 1 cm before the slanting pocket of the other front, but not "
    "through a dart of it",
    low=8.0,
    high=30.0,
)
def _before_pocket(w_SF: float, nf_S: float, pk_top: float) -> float:
    far = w_SF - pk_top - BEFORE_MOUTH
    count = round(nf_S)
    for place in reversed(FRONT_PLACES[count - 1] if count else ()):
        if abs(far - place * w_SF) < CLEAR_OF_DART:
            far = place * w_SF - CLEAR_OF_DART
    return far


@_rule(
    "wb",
    "length of the band of a wrap skirt",
    source=f"transformations §8, {SRC}",
    key="w_band",
    formula="2·(wSF + wSB + wx S) − what the skirt is eased on",
)
def _band(w_SF: float, w_SB: float, wx_S: float, e_band: float) -> float:
    return 2 * (w_SF + w_SB + wx_S) - e_band


@_rule(
    "wb cut",
    "length of the band of a wrap skirt, whole",
    source=f"transformations §8, {SRC}",
    key="l_band",
    formula="wb: the fronts themselves lap over",
)
def _whole(w_band: float) -> float:
    return w_band


@_rule(
    "tie w",
    "width of the ties, finished",
    source=SRC,
    key="tie_w",
    formula="hb − 0.6 cm: they go through a slit in the band",
    low=1.0,
    high=6.0,
)
def _tie(h_band: float) -> float:
    return h_band - 0.6


@_rule(
    "tie over",
    "tie at the end that lies over",
    source=SRC,
    key="tie_over",
    formula="what the bow takes of it",
)
def _tie_over(bow: float) -> float:
    return bow


@_rule(
    "tie under",
    "tie at the end that lies under",
    source=SRC,
    key="tie_under",
    formula="from its end through the slit at the side and round the back to the other "
    "end: wb − 4·wx S; and what the bow takes",
)
def _tie_under(w_band: float, wx_S: float, bow: float) -> float:
    return max(0.0, w_band - 4 * wx_S) + bow


@FACED.rule(
    "wf S",
    "facing beside the front edge of a wrap skirt",
    source=f"transformations 6, {SRC}",
    key="wf_S",
    formula="7 cm, or what lies between the edge and the last dart that it passes, "
    "less 0.7 cm",
    low=2.5,
    high=12.0,
)
def _facing(wx_S: float, w_SF: float, nf_S: float) -> float:
    places = FRONT_PLACES[round(nf_S) - 1] if round(nf_S) else ()
    passed = [p * w_SF for p in places if p * w_SF < wx_S]
    room = wx_S - max(passed, default=0.0) - BESIDE
    if room < 2.5:
        raise RuleError(
            f"beside the front edge (wx S) only {max(0.0, room):.1f} cm are left to "
            "the dart, too little for a facing: make the crossing more or less, or "
            "hem the edge"
        )
    return min(7.0, room)

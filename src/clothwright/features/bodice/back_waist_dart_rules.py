"""Numbers and places of a back waist dart that is led elsewhere (transformations 1.1).

The dart turns about its own point Pd, as a bust dart about the bust point: its angle is
kept, not its intake. How far a led dart ends from that point is given for the bust
alone; over the blade the same amounts are common practice, no source.
"""

from enum import Enum

from clothwright.features.bodice.bust_dart_rules import SRC, Led
from clothwright.features.bodice.opened_dart import Opened
from clothwright.rules import Kind, RuleTable


class BackPlace(Enum):
    """Where the back waist dart opens."""

    WAIST = "waist"
    """Where it is drafted."""

    SHOULDER = "shoulder"
    NECK = "neck"
    ARMHOLE = "armhole"
    SIDE = "side"
    YOKE = "yoke"
    """Below the seam of a back yoke."""


def _opened(edge: str, mark: str, *names: str) -> Opened:
    dart = f"back dart at the {edge}"
    first, leg_first, leg_last, last = names
    return Opened(
        edge, first, leg_first, leg_last, last, dart, mark, "B", "Pd", "_back"
    )


OPENED_BACK: dict[BackPlace, Opened] = {
    BackPlace.NECK: _opened(
        "neck", "Qbn", "neck", "dart neck cb", "dart neck side", "neck side"
    ),
    BackPlace.SHOULDER: _opened(
        "shoulder",
        "Qbs",
        "shoulder neck",
        "dart shoulder cb",
        "dart shoulder tip",
        "shoulder",
    ),
    BackPlace.ARMHOLE: _opened(
        "armhole",
        "Qba",
        "armhole",
        "dart armhole high",
        "dart armhole low",
        "armhole low",
    ),
    BackPlace.SIDE: _opened(
        "side", "Qbd", "side", "dart side upper", "dart side lower", "side low"
    ),
    BackPlace.YOKE: _opened(
        "yoke", "Qby", "yoke", "dart yoke cb", "dart yoke side", "yoke side"
    ),
    BackPlace.WAIST: Opened(
        "waist",
        "waist side",
        "leg side",
        "leg cb",
        "waist",
        "back waist dart",
        "",
        "B",
        "Pd",
        "_back",
    ),
}

BACK_LED = Led.told(
    "_back",
    0.25,
    ("share wd", "along b", "set-back b"),
    (
        "share of the back waist dart that is led",
        "place of the back dart on its edge, from where that is measured",
        "end of the back dart from its point Pd",
    ),
)

LEAST_BESIDE: dict[BackPlace, tuple[float, float]] = {
    BackPlace.SHOULDER: (2.0, 2.0),
    BackPlace.NECK: (2.0, 1.5),
    BackPlace.ARMHOLE: (4.0, 6.0),
    BackPlace.SIDE: (5.0, 4.0),
    BackPlace.YOKE: (2.0, 2.0),
}
"""What must stay of the edge on either side of a dart, in the direction of the loop, cm
(armhole as a panel line, first garment 5.1; the others our own choice, as in front)."""

LEAST_LONG = 4.0
"""Length of a led dart from its edge to its stitched end at the least, cm (our own
choice: a shorter one does not run out)."""

_BACK = {
    BackPlace.SHOULDER: 4.5,
    BackPlace.NECK: 5.5,
    BackPlace.ARMHOLE: 3.0,
    BackPlace.SIDE: 2.5,
    BackPlace.WAIST: 0.0,
    BackPlace.YOKE: 2.5,
}
"""How far a led dart ends from Pd, by where it opens, cm (1.1, as over the bust)."""

BACK_DART = RuleTable("back waist dart led elsewhere")


@BACK_DART.rule(
    "θb",
    "part of the back waist dart that is led",
    kind=Kind.ANGLE,
    key="theta_back",
    source=SRC,
    formula="share·ωb",
)
def _led(omega_b: float, share_back: float) -> float:
    return omega_b * share_back


@BACK_DART.rule(
    "share wd",
    "share of the back waist dart that is led",
    kind=Kind.RATIO,
    key="share_back",
    source=SRC,
    formula="1",
    low=0.25,
    high=1.0,
)
def _share() -> float:
    return 1.0


def _set_back_table(place: BackPlace) -> RuleTable:
    table = RuleTable(f"back waist dart at the {place.value}")

    @table.rule(
        "set-back b",
        "end of the back dart from its point Pd",
        key="set_back_back",
        source=f"{SRC}, as over the bust",
        formula=f"{_BACK[place]:g} cm",
        low=0.0,
        high=8.0,
    )
    def _fixed() -> float:
        return _BACK[place]

    return table


SET_BACK = {p: _set_back_table(p) for p in BackPlace}

MEASURED_FROM = {
    BackPlace.NECK: "centre back",
    BackPlace.SHOULDER: "neck",
    BackPlace.ARMHOLE: "tip",
    BackPlace.SIDE: "underarm",
    BackPlace.YOKE: "centre back",
}
"""From where the place of a dart on its edge is measured."""

WITHOUT_DART = {
    "torso": "a fish-eye dart runs on below the waist and cannot be led elsewhere; "
    "take a waist seam, or leave the back dart at the waist",
    "empire seam": "an empire seam takes the back waist dart shut; leave that dart at "
    "the waist",
}
"""What a back waist dart does not go with that is not sewn as drafted."""

_ONE_SEWN = (
    'a yoke cuts the back where the dart would lie; lead the back dart to the "yoke"'
)
_NO_SHOULDER = (
    "the shoulder runs on into the sleeve; lead the back dart to the waist or the side"
)
_AWAY = (
    "the blade is cut away where the dart would lie; lead the back dart to the waist"
)

NOT_AT: dict[BackPlace, dict[str, str]] = {
    BackPlace.SHOULDER: {
        "back yoke": _ONE_SEWN,
        "kimono": _NO_SHOULDER,
        "raglan": _NO_SHOULDER,
        "halter": _AWAY,
        "strapless": _AWAY,
        "open back": _AWAY,
    },
    BackPlace.NECK: {
        "back yoke": _ONE_SEWN,
        "back neck dart": "the back shoulder dart goes to the neck already; lead the "
        'waist dart elsewhere, or set back_shoulder = "ease"',
        "raglan": _NO_SHOULDER,
        "halter": _AWAY,
        "strapless": _AWAY,
        "open back": _AWAY,
    },
    BackPlace.ARMHOLE: {
        "back yoke": _ONE_SEWN,
        "kimono": _NO_SHOULDER,
        "raglan": _NO_SHOULDER,
        "halter": _AWAY,
        "strapless": _AWAY,
    },
    BackPlace.SIDE: {
        "side opening": "a dart in the side would lie across the zip; close it at the "
        "back, or lead the back dart elsewhere"
    },
}
"""What does not go with a dart at a place."""

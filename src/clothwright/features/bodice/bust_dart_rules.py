"""Numbers of a bust dart led elsewhere (transformations 1.1, 1.4, 1.6)."""

from collections.abc import Iterator, Mapping, Sequence
from enum import Enum
from itertools import combinations
from typing import NamedTuple

from clothwright.curves import Path, Point, degrees_between, direction, distance
from clothwright.features.base import Number
from clothwright.features.bodice.front_dart import OPENED, DartPlace
from clothwright.features.bodice.opened_dart import Opened, corners_of
from clothwright.features.bodice.side_dart import POINTS_APART
from clothwright.findings import Finding, Severity
from clothwright.paper import PaperError, Sheet
from clothwright.rules import Kind, RuleTable

SRC = "transformations 1.1"


class TakenUp(Enum):
    """What becomes of the dart where it opens."""

    DART = "a dart"
    TUCK = "a tuck"
    """Folded like a dart, stitched down for a part of its length only."""

    TUCKS = "tucks"
    """Shared by several parallel tucks."""

    GATHERS = "gathers"
    EASE = "ease"
    """Eased in: a small part of the dart only."""


class Led(NamedTuple):
    """The numbers of a dart of front or back that is led elsewhere."""

    share: Number
    along: Number
    set_back: Number

    @classmethod
    def told(
        cls, key: str, least: float, symbols: Sequence[str], names: Sequence[str]
    ) -> "Led":
        """`key` ends the keys of the three, `least` is the least share."""
        (share, along, back), of, ratio = symbols, names, Kind.RATIO
        return cls(
            Number(f"share{key}", share, of[0], SRC, low=least, high=1.0, kind=ratio),
            Number(f"along{key}", along, of[1], SRC, low=0.25, high=0.75, kind=ratio),
            Number(f"set_back{key}", back, of[2], SRC, low=0.0, high=8.0),
        )


FRONT_LED = Led.told(
    "_1",
    0.1,
    ("share", "along", "set-back"),
    (
        "share of the bust dart that goes there",
        "place of the dart on its edge, from the neck or the underarm",
        "end of the bust dart from the bust point",
    ),
)

BUST_DART = RuleTable("bust dart led elsewhere")


@BUST_DART.rule(
    "θ1",
    "part of the bust dart that is led",
    kind=Kind.ANGLE,
    key="theta_1",
    source=SRC,
    formula="share·(θ + φn)",
)
def _led(theta: float, phi_n: float, share_1: float) -> float:
    return (theta + phi_n) * share_1


@BUST_DART.rule(
    "θ2",
    "rest of the bust dart",
    kind=Kind.ANGLE,
    key="theta_2",
    source=SRC,
    formula="θ + φn − θ1",
)
def _rest(theta: float, phi_n: float, theta_1: float) -> float:
    return theta + phi_n - theta_1


AT_WAIST = RuleTable("bust dart led to the waist")


@AT_WAIST.rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source="first garment 5.1",
    formula="yBP while it is drafted; set back when the waist is trued",
    key="y_Pf",
)
def _to_bp(y_BP: float) -> float:
    return y_BP


_BACK: Mapping[DartPlace, float] = {
    DartPlace.SHOULDER: 4.5,
    DartPlace.NECK: 5.5,
    DartPlace.ARMHOLE: 3.0,
    DartPlace.WAIST: 2.5,
    DartPlace.YOKE: 2.5,
    DartPlace.CENTRE: 2.0,
    DartPlace.CENTRE_NECK: 2.0,
    DartPlace.CENTRE_WAIST: 2.0,
}
"""How far a dart ends from the bust point, by where it opens, cm (1.1)."""

LEAST_BESIDE: Mapping[DartPlace, tuple[float, float]] = {
    DartPlace.SHOULDER: (1.5, 1.5),
    DartPlace.NECK: (2.0, 2.0),
    DartPlace.ARMHOLE: (6.0, 4.0),
    DartPlace.YOKE: (2.0, 2.0),
    DartPlace.CENTRE: (4.0, 5.0),
}
"""What must stay of the edge on either side of a dart, in the direction of the loop, cm
(shoulder, neck and centre our own choice: less cannot be sewn flat; armhole as a panel
line, first garment 5.1)."""

BESIDE_CORNER = 1.5
"""What must stay of a neck between a dart and a corner of it, cm (our own)."""

LEAST_LEAN = 25.0
"""Degrees at which a dart must cross the neck: along it it cannot be sewn flat, and its
cap would be a hook (our own choice)."""

MOST_EASE = 0.6
"""What can be eased in over the bust without a dart, cm (1.4)."""


def _back_table(place: DartPlace, key: str) -> RuleTable:
    table = RuleTable(f"bust dart at the {place.value}, {key}")

    @table.rule(
        "set-back",
        "end of the bust dart from the bust point",
        key=key,
        source=SRC,
        formula=f"{_BACK[place]:g} cm",
        low=0.0,
        high=8.0,
    )
    def _fixed() -> float:
        return _BACK[place]

    return table


FIRST = {p: _back_table(p, "set_back_1") for p in DartPlace}
SECOND = {p: _back_table(p, "set_back_2") for p in DartPlace}


def _share_table(value: float) -> RuleTable:
    table = RuleTable(f"share of the bust dart, {value:g}")

    @table.rule(
        "share",
        "share of the bust dart that goes there",
        kind=Kind.RATIO,
        key="share_1",
        source=SRC,
        formula=f"{value:g}",
        low=0.1,
        high=1.0,
    )
    def _share() -> float:
        return value

    return table


WHOLE, HALF = _share_table(1.0), _share_table(0.5)
"""A bust dart that is led whole, and one that is shared between two places."""


def ease_findings(sheet: Sheet, o: Opened, place: str, to_do: str) -> Iterator[Finding]:
    """What is eased in is little enough (1.4); `place` is the symbol that alters it."""
    a, b = (sheet.lines[o.kept(e)] for e in o.legs)
    over = "bust" if o.piece == "F" else "blade"
    wide = distance(a.start, b.end)
    if wide > MOST_EASE + 1e-6:
        yield Finding(
            "P11",
            Severity.REFUSE,
            f"The {o.where} would have to take in {wide:.1f} cm as ease; over the "
            f"{over} up to {MOST_EASE:g} cm can be eased in.",
            place,
            to_do,
            {"ease": wide},
        )


def points_findings(
    points: list[Point], where: str, place: str, to_do: str
) -> Iterator[Finding]:
    """The points of a piece's darts are far enough apart."""
    for a, b in combinations(points, 2):
        if distance(a, b) < POINTS_APART - 0.05:
            yield Finding(
                "P10",
                Severity.WARN,
                f"The points of two darts{where} lie only {distance(a, b):.1f} cm "
                f"apart; {POINTS_APART:g} cm keeps the cloth flat between them.",
                place,
                to_do,
                {"apart": distance(a, b)},
            )


LESS = "Lead a smaller share of the dart there, or make gathers or a dart of it."
WHOLE_THERE = (
    "Make gathers or a dart of it (taken_up, or the word that says how the rest is "
    "taken up)."
)
"""What to do where a dart is too wide to be eased in: in part, and whole."""


def usual_on_neck(path: Path) -> float:
    """Where a dart opens on the neck, along it from the shoulder: at its middle, or at
    the middle of what lies between its last corner and the centre."""
    last = max(corners_of(path), default=0.0)
    return (last + path.length) / 2


def check_place(
    path: Path, place: DartPlace, along: float, bp: Point, *, yoke: bool = False
) -> None:
    """The bust dart has room beside it and crosses a neck; below a `yoke` it opens
    under that one's seam. Raises PaperError."""
    before, _ = LEAST_BESIDE[place]
    if place is DartPlace.CENTRE and along < before:
        above, shallower = _ABOVE[yoke]
        raise PaperError(
            f"the bust dart would open {max(0.0, along):.1f} cm below the {above} at "
            f"the centre front; {before:g} cm must stay: make {shallower}, or lead the "
            "dart elsewhere"
        )
    check_beside(path, OPENED[place], LEAST_BESIDE[place], along, bp, yoke=yoke)


_ABOVE = {
    False: ("neck", "the neck (Df) less deep"),
    True: ("seam of the yoke", "the yoke (Yf) less deep"),
}
"""What ends the centre front above, without a yoke and with one, and what to do where
it lies too low."""


def check_beside(
    path: Path,
    o: Opened,
    least: tuple[float, float],
    along: float,
    point: Point,
    *,
    yoke: bool = False,
) -> None:
    """A dart has room beside it and crosses a neck. Raises PaperError."""
    dart = "bust dart" if o.piece == "F" else "back dart"
    place = "along" if o.piece == "F" else "along b"
    if along < least[0] or path.length - along < least[1]:
        other = f"{_ABOVE[yoke][1]}, " if o.edge == "cf" else _ROOM.get(o.edge, "")
        short = max(least[0] - along, along + least[1] - path.length)
        raise PaperError(
            f"the {dart} comes too near to the end of the {o.where}, by {short:.1f} "
            f"cm: make its place ({place}) another, {other}or lead it elsewhere"
        )
    if o.edge != "neck":
        return
    if any(abs(along - c) < BESIDE_CORNER for c in corners_of(path)):
        raise PaperError(
            f"the {dart} comes too near to the corner of the neck: make its place "
            f"({place}) another, or lead it elsewhere"
        )
    way = direction(path.at_length(along), point)
    lean = degrees_between(path.direction_at_length(along), way)
    if min(lean, 180.0 - lean) < LEAST_LEAN:
        raise PaperError(
            f"the {dart} would run along the neck where it opens: make its place "
            f"({place}) another, or lead it elsewhere"
        )


_ROOM = {
    "shoulder": "the neck (dw) narrower, ",
    "armhole": "the neck (dw) narrower, ",
    "neck": "the neck (Df, Db) deeper, ",
}
"""What gives an edge more length, where its dart has no room."""

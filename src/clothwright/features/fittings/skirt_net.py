"""The net of a straight skirt as alterations change it: half widths, side, waist.

Every alteration says how it changes the net; what the waist then has too much or too
little goes into the darts of its half, and where that half has none worth sewing, into
the side seams (blocks C3, C7, corrections C13; cutting and costing 6).
"""

from collections.abc import Callable
from typing import NamedTuple

from clothwright.blocks.skirt_curves import Half
from clothwright.blocks.skirt_rules import LEAST
from clothwright.blocks.trial import by_trial
from clothwright.curves import Point, Vector
from clothwright.features.fittings.base import SOURCE
from clothwright.features.fittings.carry import STAYS, Shift
from clothwright.paper import Drafting
from clothwright.rules import RuleTable

STILL_SEWN = LEAST - 0.15
"""A dart that an alteration makes smaller is sewn down to this, cm (K7)."""


class Net(NamedTuple):
    """Numbers of the straight skirt block, half body, cm; see `blocks.skirt_rules`."""

    half_S: float
    xs_S: float
    xf_S: float
    a_S: float
    r_S: float
    db_S: float
    df_S: float
    bd_S: float
    fd_S: float
    WH: float
    W: float
    Ew: float

    def waists(self) -> tuple[float, float]:
        """Lengths of the waist curves of back and front, darts open."""
        return (self._waist(self.xs_S, self.db_S), self._waist(self.xf_S, self.df_S))

    def _waist(self, wide: float, drop: float) -> float:
        return Half(wide, self.a_S, self.r_S, drop, self.WH).waist().length


Change = Callable[[Net, float], Net]
"""The net after an amount; half hip and darts are found from it."""


def closed(old: Net, change: Change, by: float) -> Net:
    """The net after an amount, its waist closed by its darts or its sides."""
    new = change(old, by)
    new = new._replace(half_S=new.xs_S + new.xf_S)
    let_out = (new.Ew - old.Ew) / 4
    more = [b - a - let_out for a, b in zip(old.waists(), new.waists(), strict=True)]
    back, to_side = _sewn(old.bd_S, new.bd_S + more[0])
    front, too = _sewn(old.fd_S, new.fd_S + more[1])
    new = new._replace(bd_S=back, fd_S=front, a_S=new.a_S + (to_side + too) / 2)
    if back or front:
        return new
    aim = (new.W + new.Ew) / 2  # without a dart the curves themselves are the waist

    def over(a: float) -> float:
        return sum(new._replace(a_S=a).waists()) - aim

    return new._replace(a_S=by_trial(over, new.a_S - 2.0, new.a_S + 2.0) or new.a_S)


def _sewn(had: float, dart: float) -> tuple[float, float]:
    """A half's darts, and what is left to its side because they come to too little."""
    enough = STILL_SEWN if had > 0 else LEAST
    return (dart, 0.0) if dart >= enough else (0.0, dart)


def page(title: str, change: Change, formulas: dict[str, str]) -> RuleTable:
    """The page of an alteration that changes the net; `formulas` tell by key what it
    changes itself."""
    table = RuleTable(title)
    told = {
        "half_S": "xs + xf",
        "a_S": "a; and what is too little for a dart",
        "bd_S": "so that the back waist keeps its length",
        "fd_S": "so that the front waist keeps its length",
        **formulas,
    }
    alone = formulas.keys() - {"a_S"}  # the side takes what is too little for a dart
    for key, formula in told.items():
        symbol, name = _NAMES[key]
        table.rule(
            symbol,
            name,
            key=key,
            source=SOURCE,
            formula=formula,
            needs=(key, "by") if key in alone else (*Net._fields, "by"),
        )(_alone(change, key) if key in alone else _rule(change, key))
    return table


def _alone(change: Change, key: str) -> Callable[[float, float], float]:
    """The rule of a number that is changed by the amount, whatever the others are."""
    nothing = Net(*(0.0,) * len(Net._fields))
    place = Net._fields.index(key)

    def value(old: float, by: float) -> float:
        return change(nothing._replace(**{key: old}), by)[place]

    return value


def _rule(change: Change, key: str) -> Callable[..., float]:
    place = Net._fields.index(key)

    def value(*numbers: float) -> float:
        *net, by = numbers
        return closed(Net(*net), change, by)[place]

    return value


_NAMES = {
    "half_S": ("half S", "half hip of the skirt with ease"),
    "xs_S": ("xs S", "back half width of the skirt"),
    "xf_S": ("xf S", "front half width of the skirt"),
    "a_S": ("a S", "intake of each side seam at the waist of the skirt"),
    "r_S": ("r S", "rise of the side waist"),
    "db_S": ("db", "drop of the waist at the centre back"),
    "df_S": ("df", "drop of the waist at the centre front"),
    "bd_S": ("bd S", "back darts of the skirt together"),
    "fd_S": ("fd S", "front darts of the skirt together"),
    "Ew": ("Ew", "ease at the waist"),
}

BACK_MARKS = ("Cb", "Wbs", "Hbs", "Mbs", "Db1", "Eb1", "Pb1", "Db2", "Eb2", "Pb2")
FRONT_MARKS = ("Cf", "Wfs", "Hfs", "Mfs", "Df1", "Ef1", "Pf1", "Df2", "Ef2", "Pf2")
"""Marks of either half of the skirt block."""


class HalfPaper(NamedTuple):
    """One half of the skirt on the table."""

    code: str
    words: str
    marks: tuple[str, ...]
    centre: str
    """Mark of the waist level at the centre."""

    b: str
    """What its marks are told by."""

    out: float
    """Way from the centre to the side: 1 is to the right."""

    def across(self, by: float) -> Vector:
        """So far towards the side."""
        return Vector(self.out * by, 0.0)


BACK_PAPER = HalfPaper("SB", "back", BACK_MARKS, "Os", "b", 1.0)
FRONT_PAPER = HalfPaper("SF", "front", FRONT_MARKS, "Fs", "f", -1.0)
HALVES = (BACK_PAPER, FRONT_PAPER)


def side_below(d: Drafting, half: HalfPaper, by: Vector) -> Shift:
    """The side carried from the hip to the hem."""
    hip, centre = d[f"H{half.b}s"], d[half.centre]
    middle = abs(hip.x - centre.x) / 2

    def shift(p: Point) -> Vector:
        low = p.y > hip.y - 0.02 and abs(p.x - centre.x) > middle
        return by if low else STAYS

    return shift

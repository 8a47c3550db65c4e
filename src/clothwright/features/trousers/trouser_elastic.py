"""Elastic in a casing at the waist of trousers that are pulled on (transformations 8,
blocks E): without darts and opening, as wide at the waist as at the hip, the seat seam
straight so that the sides hang plumb."""

from collections.abc import Iterable
from dataclasses import replace
from typing import ClassVar, Literal

from clothwright.blocks.trial import by_trial
from clothwright.blocks.trouser_curves import Back, Front
from clothwright.blocks.trousers import BACK, FRONT, back_of
from clothwright.curves import Point
from clothwright.features.about import About
from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.skirts.elastic_casing import (
    ELASTIC,
    SRC,
    ElasticCasing,
    cased,
    raise_top,
)
from clothwright.features.trousers.trousers import Trousers
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Given, Hand, Numbers, RuleTable
from clothwright.units import Unit

_LEG = ("yk", "KW", "leg", "HW")

PULLED_ON = RuleTable("waist of trousers that are pulled on")
_rule = PULLED_ON.rule


@_rule(
    "wTF",
    "front waist of the trousers, half",
    source=f"{SRC}, blocks E2",
    key="w_SF",
    formula="hipF: as wide as at the hip",
)
def _front(hip_F: float) -> float:
    return hip_F


@_rule(
    "wTB",
    "back waist of the trousers, half",
    source=f"{SRC}, blocks E7",
    key="w_SB",
    formula="hipB: as wide as at the hip",
)
def _back(hip_B: float) -> float:
    return hip_B


@_rule(
    "fd 0",
    "front waist dart by the block, or both together",
    source=SRC,
    key="fd_0",
    formula="none: the elastic takes it up",
)
def _no_front_dart() -> float:
    return 0.0


@_rule(
    "bd T",
    "back waist darts of the trousers together",
    source=SRC,
    key="bd_T",
    formula="none: the elastic takes them up",
)
def _no_back_dart() -> float:
    return 0.0


_RISE = 2.5
"""The centre back waist rises by so much by itself, cm (E7)."""

_UPRIGHT = 0.3
"""Tilt of the seat where none brings the side plumb, cm (our own): a little more than
it comes to on the women of the survey."""

_LEANS = 0.6
"""A side that leans out by so much from hip to waist is told of, cm (our own)."""


@_rule(
    "tl",
    "tilt of the seat",
    source="common practice, no source",
    key="tl",
    formula="found so that the side of the back hangs plumb from hip to waist",
    needs=(*("H", "hip_F", "hip_B", "BRe", "cf_in", "cf_down"), *_LEG),
)
def _straight_seat(
    H: float, hip_F: float, hip_B: float, rise: float, *front: float
) -> float:
    cf, leg = front[:2], front[2:]
    of = Front(rise, hip_F, H / 20 + 0.5, *cf, *leg)

    def off(tilt: float) -> float:
        back = Back(of, hip_B, H / 10 + 1.0, tilt, _RISE, 0.0)
        plumb = Point(back.leg.hip.x, -rise)
        return back.line(plumb).length - hip_B

    found = by_trial(off, 0.0, 2.0)
    return _UPRIGHT if found is None else found


STRAIGHT = replace(
    Trousers.numbers()["front_in"],
    source=f"{SRC}: straight up from the hip",
    cm=0.0,
    inch=0.0,
)
"""The centre front, which the block takes in at the waist."""


WIDER = (
    "Eh",
    "Give the hip (Eh) 2 cm of ease or more, and let the centre front (cfi) run "
    "straight up.",
)
"""The number that makes the casing of trousers wider, and what to do with it."""


def pulled_on(n: Numbers) -> Iterable[Finding]:
    """What trousers that are pulled on have no use for, and how their side hangs."""
    if n.hand("Ew") is Hand.CHOICE:
        yield Finding(
            "EW3",
            Severity.NOTE,
            "Trousers that are pulled on are as wide at the waist as at the hip: the "
            "ease of the waist (Ew) has no use.",
            "Ew",
            "Leave it out, or take a waistband.",
        )
    leans = back_of(n).leg.hip.x - n.x_wB
    if leans > _LEANS:
        yield Finding(
            "EW4",
            Severity.WARN,
            f"The side of the back leans out by {leans:.1f} cm from hip to waist, for "
            "the tilted seat seam takes that in.",
            "tl",
            "Leave the tilt (tl) out, or alter the seat by less: the seat seam of "
            "trousers that are pulled on is straight.",
            {"leans": leans},
        )


class TrouserElastic(ElasticCasing):
    """Waist of trousers drawn in by elastic, without darts, band or opening."""

    kind: Literal["trouser elastic"] = "trouser elastic"
    title: ClassVar[str] = "Elastic waist of trousers"
    sentence: ClassVar[str] = (
        "They are pulled on: an [elastic] {width} wide and {shorter} per cent shorter "
        "than the waist runs in a casing turned down from the top."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {"casing": ("TF.waist",), "Eh": ("TF.side",)}
    pieces: ClassVar[tuple[About, ...]] = cased(FRONT, BACK)
    gives: ClassVar[frozenset[str]] = frozenset(
        {"waist finish", "trouser opening", "elastic waist", "cased waist"}
    )
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "this elastic waist is of trousers; a gathered skirt has an "
        '"elastic waist"'
    }
    clashes: ClassVar[dict[str, str]] = {
        **ElasticCasing.clashes,
        "trouser opening": "an elastic waist is pulled on and needs no fly and no zip; "
        "leave them off",
        "pleats": "the elastic takes up the whole front; leave the pleats off",
    }
    codes: ClassVar[tuple[str, ...]] = (FRONT, BACK)
    wider: ClassVar[tuple[str, str]] = WIDER

    def tables(self) -> tuple[RuleTable, ...]:
        return (ELASTIC, PULLED_ON)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield STRAIGHT.usually(unit)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        yield from pulled_on(n)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the elastic waist", _draft),)


def _draft(d: Drafting) -> None:
    raise_top(d, (FRONT, BACK), "trouser front")

"""Wearing ease by place and level, for woven cloth and for knits.

Common practice, no source (our notes on measures, §8). Lengths in cm on the whole body
girth unless the place says otherwise; knits in shares of the girth.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from importlib import resources
from typing import Any


class Level(IntEnum):
    """How loose a garment is."""

    FOUNDATION = 0
    """Strapless, boned."""

    CLOSE = 1
    FITTED = 2
    SEMI_FITTED = 3
    LOOSE = 4
    OVERSIZED = 5


@dataclass(frozen=True)
class Knit:
    """Ease of a knit class: shares (low, high) of the girth, below 0 is smaller."""

    name: str
    stretch: tuple[float, float]
    bust: tuple[float, float]
    waist: tuple[float, float]
    hip: tuple[float, float]
    arm: tuple[float, float]
    length: tuple[float, float]


STANDARD_BUST = 92.0
"""The table is right near this bust, cm; other sizes scale by its square root."""

LEAST_SCALE, MOST_SCALE = 0.9, 1.25


@cache
def places() -> Mapping[str, Mapping[Level, tuple[float, float]]]:
    """Ease ranges by place, then level; an open range ends in infinity."""
    out: dict[str, dict[Level, tuple[float, float]]] = {}
    for row in _table()["place"]:
        levels = {}
        for level in Level:
            span = row.get(f"level{level.value}")
            if span:
                levels[level] = (span[0], span[1] if len(span) > 1 else float("inf"))
        out[row["name"]] = levels
    return out


def ease(place: str, level: Level, bust: float = STANDARD_BUST) -> tuple[float, float]:
    """Least and most ease of a place, cm, scaled to a bust girth.

    Raises KeyError, with what there is, for a place or level that is not in the table.
    """
    found = places().get(place, {}).get(level)
    if found is None:
        known = ", ".join(places())
        raise KeyError(
            f"there is no ease for {place} at this level; places are {known}"
        )
    scale = min(MOST_SCALE, max(LEAST_SCALE, (bust / STANDARD_BUST) ** 0.5))
    return found[0] * scale, found[1] * scale


@cache
def knits() -> tuple[Knit, ...]:
    """The classes of knits, from firm to very stretchy."""
    return tuple(
        Knit(
            name=row["name"],
            stretch=_span(row["stretch"]),
            bust=_span(row["bust"]),
            waist=_span(row["waist"]),
            hip=_span(row["hip"]),
            arm=_span(row["arm"]),
            length=_span(row["length"]),
        )
        for row in _table()["knit"]
    )


def knit_class(stretch: float) -> Knit:
    """The class of a knit that stretches so much (a share); the nearest one for what
    stretches less or more than any."""
    return next((k for k in knits() if stretch <= k.stretch[1] + 1e-9), knits()[-1])


def knit_ease(place: str, stretch: float) -> float:
    """Ease of a knit at a place ("bust", "waist", "hip", "arm", "length"), a share of
    the girth: within its class from the most, at the least stretch, to the least."""
    knit = knit_class(stretch)
    spans = {
        "bust": knit.bust,
        "waist": knit.waist,
        "hip": knit.hip,
        "arm": knit.arm,
        "length": knit.length,
    }
    (low, high), (least, most) = spans[place], knit.stretch
    at = min(1.0, max(0.0, (stretch - least) / (most - least)))
    return high + (low - high) * at


def _span(pair: list[float]) -> tuple[float, float]:
    low, high = pair
    return low, high


def most_negative(stretch: float) -> float:
    """The most that a knit may be smaller than the body: half of its usable stretch,
    s/2/(1 + s/2), as a negative share (exact given that rule)."""
    return -0.5 * stretch / (1 + 0.5 * stretch)


@cache
def _table() -> dict[str, list[dict[str, Any]]]:
    text = resources.files("clothwright.body").joinpath("ease.toml").read_text("utf-8")
    return tomllib.loads(text)

"""Shapes and cloths for tests of the lay, made in code or read from the authorities."""

import json
import math
import random
from pathlib import Path

from clothwright.lay import Placed, Shape, Spread

AUTHORITIES = Path(__file__).parent / "authorities" / "lay"
INSTANCES = ("albano", "dagli", "mao", "marques", "shirts", "swim", "trousers")


def instance(name: str) -> tuple[tuple[Shape, ...], Spread, float]:
    """Shapes, strip and best known density of one of the open garment instances."""
    told = json.loads((AUTHORITIES / f"{name}.json").read_text("utf8"))
    shapes = tuple(
        Shape(
            i["id"],
            tuple((float(x), float(y)) for x, y in i["polygon"]),
            count=i["demand"],
            turns=tuple(float(t) for t in i["turns_deg"]),
        )
        for i in told["items"]
    )
    width = float(told["strip_width"])
    return shapes, Spread(width, ((0.0, width),)), told["best_known"]["density"]


def record(name: str) -> tuple[tuple[Placed, ...], float]:
    """The best known lay of an instance, and its length."""
    told = json.loads((AUTHORITIES / "record-layouts.json").read_text("utf8"))[name]
    placed = tuple(Placed(c, False, t, x, y) for c, t, x, y in told["placements"])
    return placed, told["length"]


def folded_set(name: str) -> tuple[Shape, ...]:
    """One of the invented sets for folded cloth; what is not on the fold is a pair."""
    told = json.loads((AUTHORITIES / "folded-sets.json").read_text("utf8"))
    return tuple(
        Shape(
            code,
            tuple((float(x), float(y)) for x, y in outline),
            on_fold=fold,
            count=1 if fold else 2,
            paired=not fold,
        )
        for code, fold, outline in told[name]
    )


def _at(size: float, share: float, angle: float) -> tuple[float, float]:
    return size * share * math.cos(angle), size * share * math.sin(angle)


def blob(rng: random.Random, size: float) -> tuple[tuple[float, float], ...]:
    """A simple outline, hollow here and there."""
    n = rng.randint(4, 9)
    return tuple(
        _at(size, 0.4 + 0.6 * rng.random(), 2 * math.pi * k / n) for k in range(n)
    )


def half(rng: random.Random, size: float) -> tuple[tuple[float, float], ...]:
    """A half piece: its fold edge on y = 0, itself above it."""
    n = rng.randint(2, 6)
    arc = [
        _at(size, 0.4 + 0.6 * rng.random(), math.pi * k / (n + 1))
        for k in range(1, n + 1)
    ]
    return ((-size, 0.0), (size, 0.0), *arc)

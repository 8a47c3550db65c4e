"""Random women of wide but human ranges, measured in full or in part.

Bust 70 to 150, height 140 to 195, cup 0 to 16 cm (AA to K), shoulders square to
sloping, torsos long or short, waists slim to full. Every other measure is the
handbook's estimate for her and a deviation of its own σ, at most 2.5 of them.
"""

import random

from clothwright.body import Body, RuleSet, estimates
from clothwright.body.measures import measures
from clothwright.rules import Numbers

MUST = ("HT", "B", "W", "H")
"""Measures that are never estimated."""

OTHERS = ("HB", "UB", "HH", "N", "NK", "HEAD", "NWB", "SBW", "NFW", "NBP", "BPS") + (
    *("CFL", "SH", "SS", "XB", "XC", "AS", "SD", "AG", "UA", "WH", "WHH"),
)


def woman(seed: int) -> Body:
    """One woman: `seed` decides who she is, and what of her was measured."""
    rng = random.Random(seed)
    bust = rng.uniform(70, 150)
    height = rng.uniform(140, 195)
    cup = rng.uniform(0, min(16.0, bust - 64))
    slim = 0.66 + 0.0015 * (bust - 70)
    waist = bust * rng.uniform(slim, 1.04)
    hip = max(waist + 6, 0.65 * bust + 0.22 * height + 4.8 + _gauss(rng) * 5)
    hip = min(hip, waist / 0.62)
    body = {"HT": height, "B": bust, "HB": bust - cup, "W": waist, "H": hip}
    for code in OTHERS[1:]:
        n = Numbers(estimates(RuleSet.HANDBOOK).rules, Body.of(body).given())
        sigma = n.why(code).sigma or 0.0
        body[code] = n[code] + _gauss(rng) * sigma
    body["SS"] = rng.uniform(12, 32)
    body = {c: _within(c, v) for c, v in body.items()}
    kept = rng.choice((0.0, 0.3, 0.6, 1.0))
    known = [c for c in OTHERS if rng.random() < kept]
    return Body.of({c: body[c] for c in (*MUST, *known)}, client=f"woman {seed}")


def _within(code: str, value: float) -> float:
    """Inside what is refused as far outside the usual (15 % beyond its range)."""
    m = measures()[code]
    return min(max(value, 0.87 * m.low), 1.13 * m.high)


def _gauss(rng: random.Random) -> float:
    return max(-2.5, min(2.5, rng.gauss(0, 1)))

"""Numbers found by trial, as with tape and pencil: try, measure, try again."""

from collections.abc import Callable

NEAR = 1e-6
"""What is found is right to this, in the unit of what is measured (cm: 0.01 µm)."""


def by_trial(off: Callable[[float], float], low: float, high: float) -> float | None:
    """The number between two bounds at which `off` comes to nothing; None when it is
    too much at both or too little at both.

    False position; an end that stays put twice running counts half (the Illinois rule).
    """
    f_low, f_high = off(low), off(high)
    if f_low * f_high > 0:
        return None
    mid, stays = low, 0
    for _ in range(60):
        if f_high == f_low:
            break
        mid = low - f_low * (high - low) / (f_high - f_low)
        f = off(mid)
        if abs(f) < NEAR:
            break
        if f * f_low > 0:
            low, f_low = mid, f
            f_high = f_high / 2 if stays > 0 else f_high
            stays = 1
        else:
            high, f_high = mid, f
            f_low = f_low / 2 if stays < 0 else f_low
            stays = -1
    return mid

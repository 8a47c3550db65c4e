"""Lengths in a sentence: the user's unit, or millimetres where that would hide it."""

from collections.abc import Callable, Sequence

Fmt = Callable[[float], str]
"""Writes a length given in cm in the user's unit: 20.955 -> "8 1/4 in"."""


def pair(fmt: Fmt, a: float, b: float) -> str:
    """Two lengths, the unit said once: "8 1/4 and 8 3/8 in"."""
    first, second = fmt(a), fmt(b)
    number, _, unit = first.rpartition(" ")
    if number and unit.isalpha() and second.endswith(f" {unit}"):
        first = number
    return f"{first} and {second}"


def amounts(fmt: Fmt, values: Sequence[float]) -> list[str]:
    """Small lengths without sign, told apart: in the user's unit when each shows and
    no two that differ read alike, else in millimetres."""
    texts = [fmt(abs(v)) for v in values]
    nothing = fmt(0.0)
    hidden = any(
        text == nothing and abs(v) > 1e-3 for v, text in zip(values, texts, strict=True)
    )
    alike = any(
        texts[i] == texts[j] and abs(abs(values[i]) - abs(values[j])) > 1e-3
        for i in range(len(values))
        for j in range(i)
    )
    if hidden or alike:
        return [f"{abs(v) * 10:.1f} mm" for v in values]
    return texts

"""Cloth to buy: the lay's length, with a reason for everything that is added to it.

Cutting and costing §2.7 (ends), §2.9 (percentages, rounding), §1.4 (stripes); 1 yd is
0.9144 m. Lengths cm, money decimal.
"""

import math
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from clothwright.lay.spread import Spread
from clothwright.order import Cloth, SoldBy
from clothwright.units import Unit, format_length, mixed

PLAIN = 0.03
"""Share that is added for straightening the ends and for cutting (§2.9)."""

LEAST = 5.0
"""The least that is added for that, cm (§2.9)."""

SHRUNK = 0.05
"""Share that is added when the cloth is shrunk before it is cut, or its own shrinkage
where that is more (§2.9)."""

NO_TOILE = 10.0
"""Added when no toile was made, cm (§2.9)."""


@dataclass(frozen=True)
class Amount:
    """One part of the cloth to buy."""

    reason: str
    cm: float


@dataclass(frozen=True)
class ToBuy:
    """How much cloth to buy, and why."""

    parts: tuple[Amount, ...]
    """The lay first; rounding up to what the shop sells last."""

    sold_by: SoldBy
    steps: int
    """How many of the shop's lengths."""

    price: Decimal | None
    """For all of it, to the cent."""

    @property
    def cm(self) -> float:
        """All of it in cm."""
        return self.steps * self.sold_by.step

    @property
    def told(self) -> str:
        """As it is asked for in the shop: "1.4 m", "1 5/8 yd"."""
        parts, unit = self.sold_by.value.split()
        if unit == "m":
            metres = Decimal(parts) * self.steps
            return f"{metres} m"
        return f"{mixed(Fraction(parts) * self.steps)} yd"


def to_buy(
    length: float, cloth: Cloth, spread: Spread, unit: Unit, *, toile: bool = True
) -> ToBuy:
    """Cloth to buy for a lay of this length (cm, of the spread cloth).

    `toile` says that one was made, or that this cloth needs no spare for changes.
    """
    n = spread.lengths
    lay = length * n
    doubled = ", twice, for it is folded across" if n == 2 else ""
    parts = [Amount(f"the lay{doubled}", lay)]
    ends = 2 * spread.end_loss
    parts.append(
        Amount(f"lost at the two ends, {_told(spread.end_loss, unit)} each", ends)
    )
    if cloth.repeat_warp is not None:
        parts.append(
            Amount("one repeat, to begin where the lay begins", cloth.repeat_warp)
        )
    straight = max(PLAIN * lay, LEAST)
    percent = (
        f"{PLAIN * 100:.0f} %" if straight > LEAST else f"at least {_told(LEAST, unit)}"
    )
    parts.append(Amount(f"for straightening and cutting, {percent}", straight))
    warp = cloth.shrink_warp / 100
    if cloth.steamed and warp > 0:
        share = max(SHRUNK, warp / (1 - warp))
        why = f"shrinks before it is cut, {share * 100:.1f} %"
        parts.append(Amount(why, share * lay))
    if not toile:
        parts.append(Amount("no toile was made", NO_TOILE))
    sold = cloth.sold(unit)
    whole = math.fsum(a.cm for a in parts)
    steps = math.ceil(whole / sold.step - 1e-9)
    parts.append(Amount(f"up to the next {sold.value}", steps * sold.step - whole))
    return ToBuy(tuple(parts), sold, steps, _price(cloth, sold, steps))


def _told(cm: float, unit: Unit) -> str:
    return format_length(cm, unit)


def _price(cloth: Cloth, sold: SoldBy, steps: int) -> Decimal | None:
    """The price of so many of the shop's lengths, rounded half up to the cent."""
    if cloth.price is None:
        return None
    parts = Fraction(sold.value.split()[0]) * steps
    whole = cloth.price * parts.numerator / parts.denominator
    return whole.quantize(Decimal("0.01"), ROUND_HALF_UP)

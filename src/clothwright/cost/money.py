"""Money: decimal, rounded half up; prices from a cost by markup or by margin."""

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal


class CostError(ValueError):
    """Rates or figures that cannot be used. `sentences` are for the user."""

    def __init__(self, *sentences: str) -> None:
        self.sentences = sentences
        super().__init__("\n".join(sentences))


def rounded(amount: Decimal, places: int = 2) -> Decimal:
    """An amount rounded half up to its currency's places."""
    return amount.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


def shown(amount: Decimal, places: int = 2) -> str:
    """An amount as it is written: with its currency's places, or more where it has
    more."""
    least = Decimal(1).scaleb(-places)
    exponent = amount.normalize().as_tuple().exponent
    if isinstance(exponent, int) and exponent < -places:
        return f"{amount.normalize():f}"
    return f"{amount.quantize(least):f}"


def plain(amount: Decimal) -> str:
    """A number without noughts behind its point."""
    return f"{amount.normalize():f}"


def up_to(amount: Decimal, unit: Decimal) -> Decimal:
    """The next whole multiple of a unit; the amount itself where it is one."""
    return (amount / unit).to_integral_value(ROUND_CEILING) * unit


def by_markup(cost: Decimal, percent: Decimal) -> Decimal:
    """Price of a cost: cost × (1 + markup)."""
    return cost * (1 + percent / 100)


def by_margin(cost: Decimal, percent: Decimal) -> Decimal:
    """Price of a cost of which the margin is a share of the price: cost ÷ (1 − margin).

    Raises CostError for a margin of the whole price or more.
    """
    if percent >= 100:
        raise CostError(
            f"a margin of {percent:f} % leaves nothing; write less than 100"
        )
    return cost / (1 - percent / 100)

"""The hem that pockets set on keep off (transformations §9)."""

from clothwright.paper import Piece

FOOT = "foot of tier"
"""Lower edge of a tier that another hangs from."""


def hem_level(on: Piece) -> float:
    """The highest level of the hem of what a pocket lies on, cm down the table; the
    upper edge of what is turned up outside."""
    for name in ("hem", FOOT):
        if on.has(name):
            return on.edge(name).path.bounds()[1]
    fold, upper = (
        next(k.path.start.y for k in on.lines if k.name == f"turn-up, {edge} edge")
        for edge in ("lower", "upper")
    )
    return fold - abs(upper - fold)

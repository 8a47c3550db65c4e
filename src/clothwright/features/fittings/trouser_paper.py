"""The halves of the trouser block as alterations find them on the table."""

_ON_EITHER = (
    "C W Y K M F H{}c H{}s W{}s K{}i K{}s M{}i M{}s D{}1 E{}1 P{}1 D{}2 E{}2 P{}2"
)


def _marks(b: str) -> tuple[str, ...]:
    names = _ON_EITHER.replace("{}", b).split()
    return tuple(m + b if len(m) == 1 else m for m in names)


MARKS = {"TF": _marks("f"), "TB": _marks("b")}
"""Marks of either half."""

HALVES = (("TF", "front", "Of"), ("TB", "back", "Ob"))
"""Code, what it is called, and the mark of its crotch line on the crease."""

INNER = {"TF": 1.0, "TB": -1.0}
"""The way from the crease to the fork: 1 is to the right."""

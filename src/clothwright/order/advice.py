"""Advice in words that the order is written in.

Rules and features name a number by its symbol in brackets, "give the waist more ease
(Ew)", as the notes do. Where that is a setting, the reader is told what to write, "give
the waist more ease (waist_ease of "trousers")"; the code of a measure stands in her own
file.
"""

import re
from collections.abc import Iterable
from functools import lru_cache

from clothwright.body import measures
from clothwright.features import Feature

_BRACKETS = re.compile(r" \(([^()]{1,20})\)")


def in_settings(text: str, features: Iterable[Feature]) -> str:
    """A sentence with every symbol in brackets told as the setting that it is."""
    settings = _settings(tuple(type(f) for f in features))

    def told(m: re.Match[str]) -> str:
        symbols = m[1].split(", ")
        if not all(s in settings for s in symbols):
            return m[0]
        return f" ({', '.join(settings[s] for s in symbols)})"

    return _BRACKETS.sub(told, text)


@lru_cache(64)
def _settings(kinds: tuple[type[Feature], ...]) -> dict[str, str]:
    """How the features of an order call their numbers, by symbol."""
    out: dict[str, str] = {}
    for kind in kinds:
        name = kind.model_fields["kind"].default
        for field, number in kind.numbers().items():
            if number.symbol not in measures():
                out.setdefault(number.symbol, f'{field} of "{name}"')
    return out

"""TOML as people write it: a table, or one sentence that points at the line."""

import re
import tomllib
from collections.abc import Callable
from typing import Any


class MiswrittenError(ValueError):
    """A text that is no TOML. `str()` is a sentence without its place."""


def read_toml(
    text: str, how: str, parse_float: Callable[[str], Any] = float
) -> dict[str, Any]:
    """The table of a text. `how` says how its lines are written.

    Raises MiswrittenError.
    """
    try:
        return tomllib.loads(text, parse_float=parse_float)
    except RecursionError:
        raise MiswrittenError("its brackets are too deep; leave most off") from None
    except ValueError as e:  # a number of thousands of figures is one too
        said = str(e)
        found = re.search(r"at line (\d+)", said)
        line = f" in line {found[1]}" if found else ""
        if any(word in said for word in ("overwrite", "twice", "Duplicate", "mutate")):
            end = line or " at its end"
            raise MiswrittenError(
                f"something stands for the second time{end}; each name stands once "
                "(what may stand again has two brackets, like [[feature]])"
            ) from None
        if "digits" in said:
            raise MiswrittenError("a number in it has far too many figures") from None
        raise MiswrittenError(f"something is miswritten{line}: {how}") from None

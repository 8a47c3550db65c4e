"""Where lines that are drawn on a piece meet."""

from clothwright.curves import Path
from clothwright.paper.piece import PaperError


def meetings(path: Path, other: Path, fault: str) -> list[tuple[float, float]]:
    """(length along `path`, length along `other`) of each meeting, in order; at least
    one. Raises PaperError with `fault`, the sentence that names the number to change,
    when they do not meet."""
    found = path.meets(other)
    if not found:
        raise PaperError(fault)
    return found

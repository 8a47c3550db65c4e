"""Reading what stands in a form."""

from datetime import date

from clothwright.order import OrderError


def number_of(text: str, what: str) -> int:
    """A whole number. Raises OrderError with `what` as its sentence."""
    if not (text.isascii() and text.isdigit()) or len(text) > 9:
        raise OrderError(what)
    return int(text)


def day_of(text: str) -> date | None:
    """A day, or none when it is left out. Raises OrderError."""
    if not text.strip():
        return None
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise OrderError(
            "The day cannot be read; write it like 2027-06-14, or leave it out."
        ) from None

"""What may be written in the book: whole texts that any copy of it can hold."""

import tomllib

from clothwright.book.errors import BookError

LONGEST_LINE = 300
"""Letters in a name, a title or a sentence."""

LONGEST_TEXT = 1_000_000
"""Letters in an order's text, a note or house rules: far more than she writes."""


def line(text: str, what: str) -> str:
    """A name or title on one line, spaces tidied, not blank. Raises BookError."""
    tidy = " ".join(_whole(text, what, LONGEST_LINE).split())
    if not tidy:
        raise BookError(f"{what} is blank; write one.")
    return tidy


def remark(text: str, what: str) -> str:
    """A short text that may be blank. Raises BookError."""
    return " ".join(_whole(text, what, LONGEST_LINE).split())


def body(text: str, what: str) -> str:
    """A long text, kept to the letter. Raises BookError."""
    return _whole(text, what, LONGEST_TEXT)


def order_text(text: str) -> str:
    """An order's text, which must be TOML. Raises BookError."""
    try:
        tomllib.loads(body(text, "The order"))
    except (tomllib.TOMLDecodeError, RecursionError) as e:
        raise BookError(
            f"The order's text is miswritten ({e}); nothing was kept."
        ) from None
    return text


def _whole(text: str, what: str, longest: int) -> str:
    if len(text) > longest:
        raise BookError(f"{what} is too long; write at most {longest} letters.")
    if "\x00" in text or any("\ud800" <= ch <= "\udfff" for ch in text):
        raise BookError(f"{what} has a character that is none; write it again.")
    return text

"""Files about clients, for the eyes of their user alone."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from clothwright.book.errors import BookError
from clothwright.sheets.write import SheetError, written


@contextmanager
def private_file(target: Path) -> Iterator[Path]:
    """A passing file that becomes `target` when all went well, for its user alone.

    Raises BookError.
    """
    try:
        with written(target, 0o600) as passing:
            yield passing
    except SheetError as e:
        raise BookError(str(e)) from e

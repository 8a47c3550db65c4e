"""What the commands share: papers and scales as typed, how an order is read and how a
refusal is said."""

from __future__ import annotations

import sys
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, NoReturn

import typer

if TYPE_CHECKING:
    from clothwright.order import Draft

MISUSED, REFUSED, FAILED, UNWRITTEN, FAULTY = 2, 3, 4, 5, 6
"""Exit codes: see `cli`."""

OrderFile = Annotated[Path, typer.Argument(help="Order file (TOML).")]


def _width(text: str) -> float:
    from clothwright.units import LengthError, Unit, parse_length

    try:
        return parse_length(text, Unit.CM)
    except LengthError as e:
        raise typer.BadParameter(str(e)) from None


RollWidth = Annotated[
    float,
    typer.Option(
        parser=_width, metavar="WIDTH", help='Of the roll, 30–250 cm: 91.4, "36 in".'
    ),
]


class Paper(StrEnum):
    """Papers by the word that is typed."""

    A4 = "a4"
    LETTER = "letter"
    A0 = "a0"
    ROLL = "roll"


class Size(StrEnum):
    """Scales by the word that is typed."""

    FULL = "full"
    HALF = "half"
    QUARTER = "quarter"


def say(text: str) -> None:
    """A line for the person, not for another program."""
    print(text, file=sys.stderr)


def refuse(sentences: tuple[str, ...], code: int = REFUSED) -> NoReturn:
    """End with sentences and an exit code."""
    for s in sentences:
        say(s)
    raise typer.Exit(code)


def drafted(path: Path) -> Draft:
    """The order of a file, drafted; ends with its sentences when it cannot be."""
    from clothwright.order import OrderError, draft, read_order

    try:
        return draft(read_order(path))
    except OrderError as e:
        refuse(e.sentences)

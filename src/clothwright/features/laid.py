"""What is laid or set on a line, and not sewn edge to edge: the panel behind an open
back, its buttons, and the loops (first garment 21, S15 to S17)."""

from collections.abc import Iterator
from dataclasses import dataclass

from clothwright.curves import Path
from clothwright.paper import MarkKind, Piece, Sheet
from clothwright.rules import Numbers

TOLERANCE = 0.1
"""What two lines, or two marks that meet, may differ, cm (21)."""


@dataclass(frozen=True)
class Laid:
    """Two lines walked in the same direction, cm, and the places that meet on them."""

    code: str
    name: str
    left: tuple[str, ...]
    right: tuple[str, ...]
    left_length: float
    right_length: float
    start: str
    end: str
    places: tuple[tuple[float, float], ...] = ()
    """Along the left line and along the right, each from its start."""


def laid(sheet: Sheet, n: Numbers) -> tuple[Laid, ...]:
    """S15 to S17, as far as the garment has them."""
    return tuple(_laid(sheet, n))


def _laid(sheet: Sheet, n: Numbers) -> Iterator[Laid]:
    back, facing = sheet.pieces.get("BC"), sheet.pieces.get("BF")
    panel = sheet.pieces.get("UP")
    if back is None or not back.has("slant"):
        return
    slant = back.edge("slant").path.reversed()  # down to the waist
    ends = ("corner", "waist")
    loops = _along(back, slant, MarkKind.LOOP)
    if panel is not None:
        lap = next(line.path for line in panel.lines if line.name == "lap line")
        hidden = n.T_round  # the rounding belongs to the neck
        yield Laid(
            "S15",
            "panel behind, left lap line",
            ("BC.slant",),
            ("UP.lap line",),
            slant.length,
            lap.length - hidden,
            *ends,
        )
        buttons = [s - hidden for s in _along(panel, lap, MarkKind.BUTTON)]
        if buttons:
            yield _marks(
                "S16",
                "panel behind, buttons to the loops",
                ("BC.slant loops",),
                ("UP.lap line buttons",),
                loops,
                buttons,
            )
    if loops and facing is not None and facing.has("slant"):
        inner = facing.edge("slant").path.reversed()
        half = n.e_loop / 2
        short = slant.length - inner.length  # both are marked from the waist up
        here = [s + d for s in loops for d in (-half, half)]
        there = [
            s + short + d
            for s in _along(facing, inner, MarkKind.LOOP)
            for d in (-half, half)
        ]
        yield _marks(
            "S17",
            "loop ends, between shell and facing",
            ("BC.slant loops",),
            ("BF.slant loops",),
            here,
            there,
        )


def _along(piece: Piece, line: Path, kind: MarkKind) -> list[float]:
    """Marks of a kind as lengths along a line, in the order of the walk."""
    return sorted(line.length_to_point(m.at) for m in piece.marks if m.kind is kind)


def _marks(
    code: str,
    name: str,
    left: tuple[str, ...],
    right: tuple[str, ...],
    here: list[float],
    there: list[float],
) -> Laid:
    """Marks that meet one by one; the lengths run from the first to the last."""
    return Laid(
        code,
        name,
        left,
        right,
        here[-1] - here[0],
        there[-1] - there[0],
        "first loop",
        "last loop",
        tuple(zip(here, there, strict=False)),
    )

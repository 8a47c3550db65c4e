"""Press studs, or hooks and eyes, in a row down a button stand (transformations §7)."""

from collections.abc import Iterator
from dataclasses import dataclass

from clothwright.features.openings.button_places import Places
from clothwright.features.openings.button_row import ButtonRow
from clothwright.features.openings.stand_pieces import Centre
from clothwright.paper import Drafting, Mark, MarkKind, Piece, Sheet, Verb, own_piece
from clothwright.rules import Numbers

STUD, HOOK = "press stud", "hook"
"""What a mark of the row is called; its number follows."""


def fastened(n: Numbers) -> bool:
    """True for a stand that closes with fasteners in place of buttons."""
    return "f_apart" in n


def row_of(n: Numbers, centre: Centre, *, across: bool, belt: bool) -> ButtonRow:
    """The row of a stand: of buttons, or of what takes their place."""
    if not fastened(n):
        return ButtonRow(centre, across, belt)
    if n.f_tape:
        return HookRow(centre, across, belt)
    return StudRow(centre, across, belt)


@dataclass(frozen=True)
class StudRow(ButtonRow):
    """Press studs on the centre line, spaced as buttons, but closer."""

    called = STUD

    def wanted(self, n: Numbers) -> float:
        return n.f_apart

    def marked(
        self, piece: Piece, n: Numbers, at: tuple[float, ...], number: int
    ) -> Piece:
        """The piece with the row marked on the centre line, for both of its halves."""
        line = next(k.path for k in piece.lines if k.name.startswith("centre "))
        top = min(line.start, line.end, key=lambda p: p.y)
        return piece.with_marks(
            *(
                Mark(f"{self.called} {i}", top._replace(y=top.y + y), MarkKind.BUTTON)
                for i, y in enumerate(at, number)
            )
        )

    def lay(self, d: Drafting, sheet: Sheet, first: float, count: int) -> None:
        """Tell the fasteners, which are marked on the sheet."""
        d.lay(
            Verb.SEW,
            sheet,
            f"{self.called}s",
            f"{count} {self.called}s on the centre line",
            amounts=(
                ("the first {} below the neck", first),
                (f"the others {self.near}{{}} apart", "f_apart"),
            ),
            detail=self.lie,
        )

    near = "about "
    lie = "one at the waist, the others evenly between and below"


@dataclass(frozen=True)
class HookRow(StudRow):
    """Hooks and eyes of a tape, which has them at one distance all along."""

    called = HOOK
    near = "every "
    lie = "as the tape has them, from the first down; it goes on over a waist seam"

    def places(self, n: Numbers, shell: Piece, hung: Piece | None) -> Places:
        """From the first down, to `b_hem` above the hem."""
        edge = self.centre.edge
        above = shell.edge(edge).length
        whole = above + (0.0 if hung is None else hung.edge(edge).length)
        at = tuple(self._down(n, self.first(n, shell), whole - n.b_hem))
        in_shell = tuple(y for y in at if y <= above)
        if hung is None:
            return Places(in_shell, ())
        return Places(in_shell, tuple(y - above for y in at if y > above))

    def _down(self, n: Numbers, first: float, last: float) -> Iterator[float]:
        at = first
        while at <= last + 1e-9:
            yield at
            at += n.f_apart


def fasteners(sheet: Sheet) -> list[tuple[str, float]]:
    """The fasteners that are marked on one half: names, and levels, y in cm."""
    return [
        (k.name, k.at.y)
        for code, p in sheet.pieces.items()
        if own_piece(code) == code
        for k in p.marks
        if k.name.startswith((f"{STUD} ", f"{HOOK} ")) and k.name.split()[-1].isdigit()
    ]

"""A row of buttons down a centre line: where they lie, and how they are marked
(transformations 7)."""

from dataclasses import dataclass

from clothwright.curves import Path, Point
from clothwright.features.openings.button_places import Places, places
from clothwright.features.openings.button_rules import SHANK
from clothwright.features.openings.stand_pieces import FRONT, Centre
from clothwright.paper import (
    Drafting,
    InnerLine,
    Mark,
    MarkKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers


@dataclass(frozen=True)
class ButtonRow:
    """The buttons of a stand; `across` for buttonholes that lie across, `belt` where
    none lies at the waist."""

    centre: Centre
    across: bool
    belt: bool

    def first(self, n: Numbers, shell: Piece) -> float:
        """The first button below the neck on the centre line: as far from a neck that
        slants as from one that is level, or below where a lapel turns over."""
        neck = shell.edge("neck").path
        front = self.centre is FRONT
        way = neck.end_direction if front else neck.start_direction
        return n.b_down + n.b_first / max(abs(way.x), 0.5)

    def _less(self, n: Numbers) -> str:
        """What to do where no button finds room above the waist."""
        if "c_break" in n:
            return "make the break of its lapel (collar break) less deep"
        return f"make the neck ({'Df' if self.centre is FRONT else 'Db'}) less deep"

    def wanted(self, n: Numbers) -> float:
        """The wanted distance from one to the next, cm."""
        return n.b_spacing

    def places(self, n: Numbers, shell: Piece, hung: Piece | None) -> Places:
        """Where the buttons lie on the shell, and on what hangs from it; all on a shell
        that is cut in one, with one on the line of its waist."""
        line = shell.edge(self.centre.edge).path
        top = min(line.start.y, line.end.y)
        first = self.first(n, shell)
        in_one = shell.has("hem")
        waist = n.yW - top if in_one else line.length
        seam = 0.0 if in_one else n.b_first
        above = self.wanted(n) / 2 if self.belt else seam
        if first > waist - above:
            raise PaperError(
                f"the first button would lie {first:.1f} cm down a centre "
                f"{self.centre.words} of {waist:.1f} cm, below that of the "
                f"waist: {self._less(n)}"
            )
        below = hung.edge(self.centre.edge).length if hung is not None else 0.0
        found = places(
            first,
            n.y_BP - top if self.centre is FRONT else None,
            waist,
            line.length - waist if in_one else below,
            self.wanted(n),
            above=above,
            seam=seam,
            clear=n.b_hem,
        )
        if not in_one:
            return found
        return Places((*found.upper, *(waist + y for y in found.lower)), ())

    def marked(
        self, piece: Piece, n: Numbers, at: tuple[float, ...], number: int
    ) -> Piece:
        """The piece with buttonholes on its row and buttons on theirs, the first of
        this number."""
        line = next(k.path for k in piece.lines if k.name.startswith("centre "))
        top = min(line.start, line.end, key=lambda p: p.y)
        out = Point(1.0 if self.centre is FRONT else -1.0, 0.0)
        row = out * n.b_row
        marks, holes = [], []
        for i, y in enumerate(at, number):
            p = top + Point(0.0, y)
            marks.append(Mark(f"button {i}", p - row, MarkKind.BUTTON))
            if self.across:
                a = p + row + out * SHANK
                hole = Path.line(a, a - out * n.b_hole)
            else:
                half = Point(0.0, n.b_hole / 2)
                hole = Path.line(p + row - half, p + row + half)
            holes.append(InnerLine(f"buttonhole {i}", hole))
        return piece.with_marks(*marks).with_lines(*holes)

    def lay(self, d: Drafting, sheet: Sheet, first: float, count: int) -> None:
        """Tell the buttons, which are marked on the sheet."""
        d.lay(
            Verb.SEW,
            sheet,
            "buttons",
            f"{count} buttons",
            amounts=(
                ("the first {} below the neck", first),
                ("the others about {} apart", "b_spacing"),
            ),
            detail="one at the level of the bust point, one at the waist, the others "
            "evenly between and below"
            if self.centre is FRONT
            else "evenly from the neck to the waist and below",
        )

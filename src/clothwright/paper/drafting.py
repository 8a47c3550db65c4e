"""The draughtsman's hand: marks and lines made by constructors that say how.

Each constructor makes a mark on the sheet and keeps what it was given as a step, so
the hand instruction is told by the draft itself. Numbers are given by key and read
from the graph; a plain float is a construction constant.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from clothwright.curves import (
    Line,
    Path,
    Point,
    Vector,
    rotate,
    unit,
)
from clothwright.paper.record import Amount, Step, Verb
from clothwright.paper.sheet import Sheet
from clothwright.rules import Numbers


class Taped(NamedTuple):
    """A length found on the paper by trial, cm, or an angle, and its symbol in the
    notes."""

    symbol: str
    value: float
    angle: bool = False
    """True for degrees."""


Size = str | float | Taped
"""A number's key in the graph, a length in cm, or one found on the paper."""


class Drafting:
    """A draft at work: `n` the numbers, `sheet` the table, `steps` what was done."""

    def __init__(
        self, n: Numbers, sheet: Sheet | None = None, feature: str = "", part: str = ""
    ) -> None:
        self.n = n
        self._sheet = sheet or Sheet()
        self._marks: dict[str, Point] = {}
        """Marks made since the sheet was last looked at."""

        self.steps: list[Step] = []
        self.tables: list[Sheet] = []
        """The sheet after each step that changes paper."""

        self.feature = feature
        self.part = part
        self.under: tuple[Path, ...] = ()
        """What lies under the paper that is drawn on: the neck of the garment, of
        which a collar is drafted."""

    # -- reading ------------------------------------------------------------------
    @property
    def sheet(self) -> Sheet:
        """The table as it lies."""
        if self._marks:
            self._sheet = self._sheet.named(**self._marks)
            self._marks = {}
        return self._sheet

    @sheet.setter
    def sheet(self, sheet: Sheet) -> None:
        self._sheet, self._marks = sheet, {}

    def __getitem__(self, name: str) -> Point:
        """The mark of this name."""
        at = self._marks.get(name)
        return self._sheet.points[name] if at is None else at

    def line(self, name: str) -> Path:
        """The drawn line of this name."""
        return self.sheet.lines[name]

    def size(self, size: Size) -> float:
        """The value of a size, cm."""
        if isinstance(size, str):
            return self.n[size]
        return size.value if isinstance(size, Taped) else size

    def _amount(self, how: str, size: Size, *, angle: bool = False) -> Amount:
        if isinstance(size, str):
            n = self.n
            return Amount(how, n.called(size), n[size], angle)
        if isinstance(size, Taped):
            return Amount(how, "", size.value, angle or size.angle, size.symbol)
        return Amount(how, "", size, angle)

    # -- marks ----------------------------------------------------------------------
    def _mark(
        self,
        verb: Verb,
        name: str,
        at: Point,
        says: str,
        frm: tuple[str, ...] = (),
        amounts: tuple[Amount, ...] = (),
        detail: str = "",
    ) -> Point:
        self._marks[name] = at
        self.steps.append(
            Step(
                verb,
                name,
                says,
                frm,
                amounts,
                detail,
                at,
                over=self.under,
                part=self.part,
                feature=self.feature,
            )
        )
        return at

    def start(self, name: str, at: Point, says: str) -> Point:
        """The first mark of a draft."""
        return self._mark(Verb.START, name, at, says)

    def point(
        self,
        name: str,
        frm: str,
        says: str,
        *,
        right: Size | None = None,
        left: Size | None = None,
        down: Size | None = None,
        up: Size | None = None,
    ) -> Point:
        """From a mark, measure across (right is towards the centre front) and down or
        up. A negative size is laid off the other way."""
        x, y = self[frm]
        amounts: list[Amount] = []
        for how, size, dx, dy in (
            ("right", right, 1, 0),
            ("left", left, -1, 0),
            ("down", down, 0, 1),
            ("up", up, 0, -1),
        ):
            if size is not None:
                amount = self._amount(how, size)
                x, y = x + dx * amount.value, y + dy * amount.value
                amounts.append(amount)
        return self._mark(Verb.MEASURE, name, Point(x, y), says, (frm,), tuple(amounts))

    def along(
        self, name: str, frm: str, towards: Vector, size: Size, says: str, line: str
    ) -> Point:
        """From a mark, measure along a line ("the shoulder line")."""
        at = self[frm] + unit(towards) * self.size(size)
        return self._mark(
            Verb.ALONG, name, at, says, (frm,), (self._amount("along", size),), line
        )

    def turned(self, name: str, of: str, about: str, degrees: Size, says: str) -> Point:
        """A mark turned about another, clockwise as seen for positive degrees."""
        at = rotate(self[of], self[about], self.size(degrees))
        return self._mark(
            Verb.TURN,
            name,
            at,
            says,
            (of, about),
            (self._amount("by {}", degrees, angle=True),),
        )

    def also(self, name: str, of: str) -> None:
        """A second name for the mark made last; its step tells both."""
        self._marks[name] = self[of]
        last = self.steps[-1]
        assert last.makes == of
        self.steps[-1] = replace(last, says=f"{last.says} (it is {name} too)")

    def found(
        self,
        name: str,
        at: Point,
        says: str,
        *,
        frm: tuple[str, ...] = (),
        amounts: Sequence[tuple[str, Size]] = (),
        detail: str = "",
    ) -> Point:
        """A mark found by another construction; `detail` says which."""
        return self._mark(
            Verb.FIND,
            name,
            at,
            says,
            frm,
            tuple([self._amount(h, s) for h, s in amounts]),
            detail,
        )

    # -- lines ----------------------------------------------------------------------
    def draw(
        self,
        name: str,
        path: Path,
        says: str,
        *,
        frm: tuple[str, ...] = (),
        detail: str = "",
    ) -> Path:
        """A line drawn on the table under a name, straight or curved."""
        self.sheet = self.sheet.drawn(**{name: path})
        straight = all(isinstance(s, Line) for s in path.segments)
        self.steps.append(
            Step(
                Verb.RULE if straight else Verb.CURVE,
                name,
                says,
                frm,
                (),
                detail,
                lines=(path,),
                over=self.under,
                part=self.part,
                feature=self.feature,
            )
        )
        return path

    # -- paper ----------------------------------------------------------------------
    def lay(
        self,
        verb: Verb,
        sheet: Sheet,
        makes: str,
        says: str,
        *,
        amounts: Sequence[tuple[str, Size]] = (),
        frm: tuple[str, ...] = (),
        detail: str = "",
        lines: tuple[Path, ...] = (),
        over: tuple[Path, ...] = (),
    ) -> None:
        """Keep a paper operation's new sheet, and the step that it was; `over` is what
        lies under the paper that it makes."""
        self.sheet = sheet
        self.tables.append(sheet)
        self.steps.append(
            Step(
                verb,
                makes,
                says,
                frm,
                tuple([self._amount(h, s) for h, s in amounts]),
                detail,
                lines=lines,
                over=over or self.under,
                part=self.part,
                feature=self.feature,
                after=sheet.unwatched(),
            )
        )

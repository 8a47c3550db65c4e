"""Press studs, or hook-and-eye tape, on a button stand in place of buttons and
buttonholes (transformations §7)."""

from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Shown
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.fastener_row import fasteners
from clothwright.features.openings.stand_button import FASTENED
from clothwright.features.operations import Hazard, Operation, Stitch, Task, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §7"

FASTENED_STAND = RuleTable("button stand with fasteners")
STUDS = RuleTable("press studs in a row")
TAPE = RuleTable("hook-and-eye tape")

_BESIDE = 1.0
"""A tape goes on so far beyond its first and its last hook, cm (common practice, no
source)."""


@FASTENED_STAND.rule(
    "b",
    "button stand beyond the centre line",
    source=_SRC,
    key="b_stand",
    formula="2 cm, so that the fasteners on the centre lie under cloth",
    low=0.8,
    high=12.0,
)
def _stand() -> float:
    return 2.0


@FASTENED_STAND.rule(
    "b1",
    "first fastener below the edge, and the nearest to a waist seam",
    source="common practice, no source",
    key="b_first",
    formula="1 cm",
)
def _first() -> float:
    return 1.0


@STUDS.rule(
    "f apart",
    "from fastener to fastener",
    source=_SRC,
    key="f_apart",
    formula="6 cm",
    low=1.0,
    high=12.0,
)
def _studs() -> float:
    return 6.0


@STUDS.rule(
    "tape", "tape of hooks and eyes", source=_SRC, key="f_tape", kind=Kind.COUNT
)
def _single() -> float:
    return 0


@TAPE.rule(
    "f apart",
    "from fastener to fastener",
    source=_SRC,
    key="f_apart",
    formula="2.5 cm, as the tape has them",
    low=1.0,
    high=12.0,
)
def _hooks() -> float:
    return 2.5


@TAPE.rule("tape", "tape of hooks and eyes", source=_SRC, key="f_tape", kind=Kind.COUNT)
def _in_tape() -> float:
    return 1


class By(Enum):
    """What closes the stand."""

    STUDS = "press studs"
    """Sewn on one by one."""

    HOOKS = "hooks and eyes"
    """Of a tape."""


_USUAL = {By.STUDS: (5.0, 7.0), By.HOOKS: (2.0, 2.5)}
"""From one to the next, cm (7)."""


class Fasteners(Feature):
    """Press studs or hooks and eyes on a button stand."""

    kind: Literal["fasteners"] = "fasteners"
    title: ClassVar[str] = "Press studs, hooks and eyes"
    sentence: ClassVar[str] = (
        "In place of buttons the stand [closes] with {by}, {apart} apart."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {
        "f apart": ("FC.stand", "F.stand", "BC.stand", "B.stand", "BD.stand"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"fasteners"})
    needs: ClassVar[dict[str, str]] = {
        "button stand": 'a row of press studs or hooks lies on a "button stand"; add '
        "one",
    }
    clashes: ClassVar[dict[str, str]] = {
        "two rows": "a double-breasted stand shows its buttons; let it have one row, "
        "or leave the press studs or hooks off",
    }

    by: By = By.STUDS
    apart: Annotated[
        Length | None,
        Number(
            "f_apart",
            "f apart",
            "from fastener to fastener",
            _SRC,
            low=1.0,
            high=12.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FASTENED_STAND, STUDS if self.by is By.STUDS else TAPE)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        over, under = self._halves
        yield (
            f"Right over left: {over} behind the right edge, sewn to the inner layer "
            f"alone, {under} on the left, all on the crosses of the centre line."
        )

    @property
    def _halves(self) -> tuple[str, str]:
        """What is sewn on either side."""
        if self.by is By.STUDS:
            return "the halves with the ball", "those with the hollow"
        return "the hooks", "the eyes"

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        count = len(fasteners(sheet))
        if self.by is By.STUDS:
            yield Notion(
                Article.STUD,
                count + _on_collar(sheet) + 1,
                "for the button stand",
                spare=1,
            )
            return
        yield Notion(
            Article.HOOK_TAPE,
            1,
            f"for the button stand, its hooks {count} in number",
            length=_tape(n, count),
        )
        if _on_collar(sheet):
            yield Notion(Article.HOOK, 1, "for the collar's stand")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        count, more = len(fasteners(sheet)), _on_collar(sheet)
        over, under = self._halves
        too = " and the collar's stand" if more else ""
        if self.by is By.STUDS:
            yield Operation(
                Work.FASTEN,
                f"Sew {count + more} press studs on",
                (
                    f"First {over}, behind the right edge{too}, through the inner "
                    "layer alone; chalk the balls, lay the edges centre on centre and "
                    f"press: so {under} come to lie exactly opposite.",
                ),
                stitch=Stitch.HAND,
                task=Task.HOOK,
                count=float(count + more),
                hazards=(Hazard.SMALL_PART,),
            )
            return
        yield Operation(
            Work.FASTEN,
            "Sew the hook-and-eye tape on",
            (
                f"{count} hooks, {fmt(n.f_apart)} apart: those behind the right edge, "
                "their bends on the centre line, the eyes on the left, so that centre "
                "lies on centre; the ends of the tape turned in.",
            ),
            stitch=Stitch.HAND,
            length=4 * _tape(n, count),
            task=Task.BY_HAND,
            count=2.0,
            hazards=(Hazard.SMALL_PART,),
        )
        if more:
            yield Operation(
                Work.FASTEN,
                "Sew a hook and eye to the collar's stand",
                stitch=Stitch.HAND,
                task=Task.HOOK,
                hazards=(Hazard.SMALL_PART,),
            )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        least, most = _USUAL[self.by]
        if not least - 1e-9 <= n.f_apart <= most + 1e-9:
            so = "the edge gapes between" if n.f_apart > most else "few are needed so"
            yield Finding(
                "FS1",
                Severity.WARN,
                f"The {self.by.value} stand {n.f_apart:.2f} cm apart, where {least:g} "
                f"to {most:g} cm are usual: {so}.",
                "f apart",
                "Set them (f apart) as is usual.",
                {"apart": n.f_apart},
            )


def _tape(n: Numbers, count: int) -> float:
    """Length of a tape of so many hooks, cm."""
    return (count - 1) * n.f_apart + 2 * _BESIDE


def _on_collar(sheet: Sheet) -> int:
    """One where the stand of a collar laps over too."""
    return sum(k.name == FASTENED for p in sheet.pieces.values() for k in p.marks)

"""Turn-ups of trousers: the leg runs on below its lower edge, mirrored twice
(truing 8, mirrored hem)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import BACK, FRONT, back_of, front_of
from clothwright.curves import Line, Path, Point
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.operations import Operation
from clothwright.features.trousers.trouser_sewing import turn_up_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "common practice, no source"


LEAN = 0.06
"""A leg that leans more to each side below the knee has no straight fold to turn up
along, cm for each cm down."""


_TOLD = 0.1
"""Its bounds are told in full millimetres or sixteenths of an inch, cm."""

TURN_UPS = RuleTable("turn-ups")


@TURN_UPS.rule(
    "HW",
    "width of the hem, all round",
    source=_SRC,
    key="HW",
    formula="AN + 18 cm, at least 38 cm, and no further from KW than "
    "0.24·(leg − yk), so that the turn-ups lie flat",
    low=26.0,
    high=120.0,
)
def _hem(AN: float, KW: float, leg: float, yk: float) -> float:
    low, high = _hems(KW, leg, yk)
    return min(max(38.0, AN + 18.0, low), high)


def _hems(knee: float, leg: float, yk: float) -> tuple[float, float]:
    """The narrowest and the widest hem on which turn-ups lie, cm."""
    lean = 4 * LEAN * (leg - yk)
    return knee - lean, knee + lean


class TurnUps(Feature):
    """Turn-ups at the hem of trousers."""

    kind: Literal["turn-ups"] = "turn-ups"
    title: ClassVar[str] = "Turn-ups"
    sentence: ClassVar[str] = "The legs end in [turn-ups], {depth} deep."
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, shown=("turn-ups",)) for code in (FRONT, BACK)
    )
    gives: ClassVar[frozenset[str]] = frozenset({"turn-ups"})
    needs: ClassVar[dict[str, str]] = {"trouser block": "turn-ups are for trousers"}

    depth: Annotated[
        Length | None,
        Number(
            "tu",
            "tu",
            "depth of the turn-ups",
            _SRC,
            4.0,
            1.5,
            2.0,
            8.0,
            (3.0, 5.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TURN_UPS,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the turn-ups", _draw),)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Turn-ups: fold the leg in along their upper edge and hem it inside, then "
            f"turn {fmt(n.tu)} up along the lower edge and catch it at the seams."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return turn_up_operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.tu > 0.25 * (n.leg - n.yk):
            yield Finding(
                "U1",
                Severity.WARN,
                f"The turn-ups are {n.tu:.1f} cm deep on a lower leg of "
                f"{n.leg - n.yk:.1f} cm.",
                "tu",
                "Make them (tu) less deep.",
                {"tu": n.tu},
            )


def _draw(d: Drafting) -> None:
    n = d.n
    sheet, drawn = d.sheet, []
    for code, leg in ((FRONT, front_of(n).leg), (BACK, back_of(n).leg)):
        low, high = _hems(n.KW, n.leg, n.yk)
        if not low - _TOLD <= n.HW <= high + _TOLD:
            raise PaperError(
                "turn-ups need a leg that is nearly straight below the knee: on a knee "
                f"(KW) of {n.KW:.1f} cm make the hem (HW), which is {n.HW:.1f} cm, "
                f"{low:.1f} cm to {high:.1f} cm, or leave the turn-ups off"
            )
        piece = sheet.piece(code)
        crease = 0.0 if code == FRONT else -n.apart
        half = leg.hem_half
        up, down = half - leg.lean * n.tu, n.leg + n.tu
        foot = n.leg + 2 * n.tu

        def side(sign: int, crease: float = crease) -> list[Point]:
            return [
                Point(crease + sign * w, y)
                for w, y in ((half, n.leg), (up, down), (half, foot))  # noqa: B023
            ]

        right, left = side(1), side(-1)
        # clockwise the right edge comes first, then the hem, then the left
        before, after = piece.before("hem"), piece.after("hem")
        edges = (
            before.along(before.path + _through(right)),
            Edge("hem in", Path.line(right[-1], left[-1]), EdgeKind.FINISHED),
            after.along(_through(left[::-1]) + after.path),
        )
        sheet = redraw(sheet, code, [before.name, "hem", after.name], edges)
        sheet = sheet.put(
            sheet.piece(code).with_lines(
                InnerLine("turn-up, lower edge", Path.line(left[0], right[0])),
                InnerLine("turn-up, upper edge", Path.line(left[1], right[1])),
            )
        )
        drawn += [e.path for e in edges]
    d.part = "turn-ups"
    d.lay(
        Verb.REDRAW,
        sheet,
        "turn-ups",
        "lower edge of both legs, run on for the turn-ups",
        amounts=(("up", "tu"), ("down again inside", "tu")),
        detail="each time as wide as the leg that it lies on",
        lines=tuple(drawn),
    )


def _through(points: list[Point]) -> Path:
    return Path(tuple(Line(a, b) for a, b in zip(points, points[1:], strict=False)))

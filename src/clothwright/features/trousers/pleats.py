"""Pleats in the front of trousers, in place of darts (transformations §1.6, §10)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number
from clothwright.features.operations import Operation
from clothwright.features.trousers.trouser_sewing import pleat_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §10"

PLEATS = RuleTable("front pleats")
_rule = PLEATS.rule


@_rule("pleated", "front pleated", source=_SRC, key="pleated", kind=Kind.COUNT)
def _pleated() -> float:
    return 1


@_rule(
    "pl",
    "fullness that the pleats add to the front",
    source=_SRC,
    key="pl",
    formula="both pleats less what the darts would take",
    low=0.0,
    high=12.0,
)
def _fullness(p1: float, p2: float, fd_0: float) -> float:
    return max(0.0, p1 + p2 - fd_0)


@_rule(
    "n fd",
    "front pleats of each half",
    source=_SRC,
    key="nf_T",
    kind=Kind.COUNT,
    low=0,
    high=2,
)
def _count(p2: float) -> float:
    return 2 if p2 > 0 else 1


@_rule(
    "fs T",
    "share of the first pleat",
    source=_SRC,
    key="fs_T",
    kind=Kind.RATIO,
    formula="p1/(p1 + p2)",
)
def _first(p1: float, p2: float) -> float:
    return p1 / (p1 + p2)


@_rule("lf T", "length of the front pleats", source="our own", key="lf_T")
def _length(BRe: float) -> float:
    return min(13.0, 0.45 * BRe)


class Pleats(Feature):
    """Pleats in the front."""

    kind: Literal["front pleats"] = "front pleats"
    title: ClassVar[str] = "Pleats in the front"
    sentence: ClassVar[str] = (
        "The front falls from [pleats], {first} at the crease and {second} beside it."
    )
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"pleats"})
    needs: ClassVar[dict[str, str]] = {"trouser block": "these pleats are for trousers"}

    first: Annotated[
        Length | None,
        Number(
            "p1",
            "p1",
            "depth of the pleat on the crease",
            _SRC,
            3.5,
            1.375,
            1.5,
            6.0,
            (3.0, 4.0),
        ),
    ] = None
    second: Annotated[
        Length | None,
        Number(
            "p2",
            "p2",
            "depth of a second pleat, half way to the side",
            _SRC,
            0.0,
            0.0,
            0.0,
            4.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (PLEATS,)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Pleats: fold each line at its notch over to the other, towards the centre "
            "front, and baste across; press the first into the crease."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return pleat_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        less = n.fd_0 - n.p1 - n.p2
        if less > 0.1:
            yield Finding(
                "L1",
                Severity.WARN,
                f"The pleats take {less:.1f} cm less than the waist needs; the side is "
                "taken in by it.",
                "p1",
                "Make the pleat (p1) deeper, or add a second (p2).",
                {"less": less},
            )

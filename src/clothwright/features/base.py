"""What a style feature is: a typed model, its rules, its stages, its sentence.

Terminology
    feature   one style decision of an order: a neckline, a princess line, a peplum.
    stage     one part of its work, with its place in the order of drafting; a pure
              function of the numbers it reads and the table it is given.
    gives     words for what a feature provides ("front panels"). A "block" is what an
              order is drafted on; there is one.
    needs     such words that must be given by some feature of the order.
    clashes   such words that no other feature of the order may give.

The ranks follow the order of application of our first-garment notes (§1), but that
what hangs on the waist comes after closure and facings: neither needs the other, and a
longer peplum then redraws nothing else.
"""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from types import MappingProxyType
from typing import Any, ClassVar, Final, NamedTuple

from pydantic import BaseModel, ConfigDict

from clothwright.features.about import About
from clothwright.features.chains import Chains
from clothwright.features.notions import Notion
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Run, Seam, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit


class Rank(IntEnum):
    """Place of a stage in the draft; a lower rank is drafted first."""

    BLOCK = 20
    FITTING = 25
    BACK_SHOULDER = 30
    SHOULDER = 40
    NECK = 70
    ARMHOLE = 80
    CONTOUR = 82
    FUNNEL = 84
    BACK_DART = 85
    FRONT_PANELS = 90
    BACK_PANELS = 100
    TOP_EDGE = 110
    BLEND = 120
    WAIST = 130
    BELOW_WAIST = 140
    HEM_OPENED = 145
    CLOSURE = 150
    CROSSED = 151
    UNDER_BUST = 152
    SLEEVE = 154
    SLEEVE_FITTING = 155
    SLEEVE_HEAD = 156
    SLEEVE_HEM = 157
    SLEEVE_END = 158
    FACING = 160
    SKIRT = 165
    STAND = 167
    COLLAR = 168
    SEAMS = 170
    LINING = 180
    YOKE = 182
    LINING_IN_ONE = 183
    CUT_ON = 184
    YOKE_DART = 185
    LAID_OPEN = 186
    BY_HAND = 190


@dataclass(frozen=True)
class Number:
    """A number of a feature's model: what it is, its default and its bounds.

    `cm` and `inch` are two workroom defaults, not a conversion: an order takes the
    one of its unit. With neither, a rule of the same key gives the default. `low` to
    `high` is allowed; outside `usual` is warned about. Inch values are inches; what is
    no length has `cm` alone.
    """

    key: str
    symbol: str
    name: str
    source: str
    cm: float | None = None
    inch: float | None = None
    low: float | None = None
    high: float | None = None
    usual: tuple[float, float] | None = None
    kind: Kind = Kind.LENGTH

    def default(self, unit: Unit) -> float | None:
        """The default in cm (or degrees, or a ratio) for an order in this unit."""
        if unit is not Unit.IN or self.inch is None:
            return self.cm
        return self.inch * 2.54 if self.kind is Kind.LENGTH else self.inch

    def usually(self, unit: Unit) -> Given:
        """The default as a number of the draft. Raises ValueError when a rule gives
        it."""
        value = self.default(unit)
        if value is None:
            raise ValueError(f"{self.key} has no default of its own")
        return self.by_default(value)

    def by_default(self, value: float) -> Given:
        """This, in cm (or degrees, or a ratio), as a default of the draft."""
        return Given(
            self.key,
            self.symbol,
            self.name,
            self.kind,
            value,
            Hand.DEFAULT,
            self.source,
        )


@dataclass(frozen=True)
class Pin:
    """A point of the paper that a number moves, where a hand may pull it.

    It stands at the corner between two edges of the first of `pieces` that is on the
    table, and goes along the second of them, or along `way` (x, y), as the number
    grows.
    """

    field: str
    pieces: tuple[str, ...]
    edges: tuple[str, str]
    way: tuple[float, float] | None = None


class NeckEnd(NamedTuple):
    """A number that says where a neck ends: a depth from the shoulder, which slopes by
    another angle on the other side, while both sides end at one place of the centre."""

    field: str
    edge: str
    """The centre line, or the edge of its stand: "cf"."""

    pieces: tuple[str, ...]
    """That the neck may end on."""


Words = Collection[str]
"""What the features of an order provide."""

Shown = Mapping[str, tuple[str, ...]]
"""Edges by what is seen at them: at the first of them that is on the table."""


@dataclass(frozen=True)
class Cuts:
    """How a piece is cut, of each of its cloths."""

    how: str
    """As printed: "1, right side up", "6"."""

    count: int = 1
    cloths: tuple[str, ...] = ("shell",)
    """Plain names: "shell", "underlining", "lining", "interlining"."""

    bias: bool = False
    """On the bias: the grain drawn on it may lie along the warp or across it."""


@dataclass(unsafe_hash=True)
class Stage:
    """One part of a feature's work."""

    rank: Final[Rank]
    name: Final[str]
    apply: Final[Callable[[Drafting], None]]


class Feature(BaseModel):
    """Base of all feature models. Lengths are cm inside; see `Number`."""

    # built when an order first names it: building all costs more than a draft
    model_config = ConfigDict(
        extra="forbid", frozen=True, allow_inf_nan=False, defer_build=True
    )

    kind: str
    title: ClassVar[str]
    sentence: ClassVar[str]
    """How the order tells it; `{field}` are its live words, `[…]` is its name."""

    pins: ClassVar[tuple[Pin, ...]] = ()
    """Points that its numbers move, for a hand to pull."""

    shows: ClassVar[Shown] = {}
    """Where a number, by its symbol, or a word that its checks name, is seen."""

    pieces: ClassVar[tuple[About, ...]] = ()
    """What it says about its pieces, and of others' what only it knows."""

    seams: ClassVar[Mapping[str, str]] = {}
    """The codes of its seams, each with what it stands for, for a garment that has none
    such: "S46": "mouth of a slanting pocket"."""

    retells: ClassVar[Mapping[str, str]] = {}
    """Words of other features' sentences that are others where it is: what they call
    the armhole is a strapless bodice's top edge."""

    page: ClassVar[int] = 1
    """Place of its rules in the book: the block's page (0) comes first, and a rule or a
    default of a later page takes the place of an earlier one's, as trued darts do (2).
    """

    neck_ends: ClassVar[tuple[NeckEnd, ...]] = ()
    """Its numbers that say where a neck ends at the centre."""

    at_centre: ClassVar[tuple[str, ...]] = ()
    """Fields of its numbers that lie at the centre: both sides of a body have them
    alike."""

    gives: ClassVar[frozenset[str]] = frozenset()
    needs: ClassVar[Mapping[str, str]] = {}
    """Word needed: what to do when nothing gives it."""

    clashes: ClassVar[Mapping[str, str]] = {}
    """Word that no other feature may give: why."""

    makes_up: ClassVar[Mapping[str, str]] = {}
    """Word that the whole order must give, since this block is no garment without it:
    the sentence when nothing does."""

    @classmethod
    def numbers(cls) -> Mapping[str, Number]:
        """The number of each field that has one."""
        return _numbers(cls)

    def said(self) -> str:
        """Its sentence, as it is set."""
        return self.sentence

    def said_beside(self, others: Iterable["Feature"]) -> str:
        """Its sentence, as it is set, in an order of these features."""
        text = self.said()
        for old, new in (pair for f in others for pair in f.retells.items()):
            text = text.replace(old, new)
        return text

    def provides(self) -> frozenset[str]:
        """Words for what this feature provides, as it is set."""
        return self.gives

    def wants(self) -> Mapping[str, str]:
        """Words that this feature needs, as it is set."""
        return self.needs

    def forbids(self) -> Mapping[str, str]:
        """Words that this feature does not allow beside it, as it is set."""
        return self.clashes

    def tables(self) -> tuple[RuleTable, ...]:
        """The pages of rules that this feature adds."""
        return ()

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """Rules to be put beside and in place of all the order's rules; `given` are
        the keys of numbers that no rule gives."""
        return {}

    def rewrites(self) -> bool:
        """True for a feature that has something to rewrite with."""
        return type(self).rewritten is not Feature.rewritten

    def given(self, unit: Unit) -> Iterable[Given]:
        """The numbers of this feature: her choices, and defaults that no rule gives. A
        choice outranks any default."""
        for field, number in self.numbers().items():
            value: Any = getattr(self, field)
            if value is not None:
                yield Given(
                    number.key,
                    number.symbol,
                    number.name,
                    number.kind,
                    float(value),
                    Hand.CHOICE,
                    "the order",
                )
            elif number.default(unit) is not None:
                yield number.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        """Its work, in parts."""
        return ()

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        """What is sewn to what for it, when all shapes are final; None for a seam that
        is not on this table. As a stage, it reads its numbers through `n`."""
        return ()

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        """Corners of its pieces that run on into each other when they are sewn;
        where the neck comes to a point is told by `words`."""
        return ()

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        """How its pieces are cut, by their codes, where that is not a pair, or once on
        the fold, of the shell alone."""
        return {}

    def cut_again(self, sheet: Sheet) -> Mapping[str, str]:
        """Pieces, by their codes, that are cut once more as the shell is, and the plain
        name of the cloth for that."""
        return {}

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        """Edges that are stayed with tape."""
        return ()

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        """What its marks mean and how it is handled, for the first page."""
        return ()

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        """What is bought for it, and strips cut without a pattern."""
        return ()

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        """What is done for it in the cloth and no seam tells."""
        return ()

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        """What only this feature has to check on the finished draft."""
        return ()


def useless(
    feature: Feature, fields: Iterable[str], so: str, to_do: str
) -> list[Finding]:
    """Notes on numbers of the order that a feature, set `so`, has no use for."""
    numbers = feature.numbers()
    return [
        Finding(
            "Q5",
            Severity.NOTE,
            f"{so} has no use for {field}, the {numbers[field].name}.",
            numbers[field].symbol,
            to_do,
        )
        for field in fields
        if getattr(feature, field) is not None
    ]


def before_fitting(draft: Callable[[Drafting], None]) -> Callable[[Drafting], None]:
    """The drafting of a block from its numbers as they were before a fitting altered
    them."""

    def drafted(d: Drafting) -> None:
        numbers, d.n = d.n, d.n.unfitted
        draft(d)
        d.n = numbers

    return drafted


ONE_BLOCK = {"block": "an order is drafted on one block; give the other its own order"}
"""What a block does not allow beside it."""


@cache
def _numbers(kind: type[Feature]) -> Mapping[str, Number]:
    return MappingProxyType(
        {
            name: m
            for name, f in kind.model_fields.items()
            for m in f.metadata
            if isinstance(m, Number)
        }
    )

"""Drafting an order: features in their order, numbers from the graph, then checks.

Each stage is a pure function of the numbers that it reads and of what it looks at on
the table; so are a feature's checks. What they gave is kept; when something changes,
only what rests on it is redone.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cache, cached_property, partial

from clothwright.body import BUST, check_body
from clothwright.curves import lately
from clothwright.features import Feature, Rank, Stage
from clothwright.features.garment import joints_of, seams_of
from clothwright.findings import Finding, Severity
from clothwright.order.advice import in_settings
from clothwright.order.file import Order, OrderError
from clothwright.order.kept import Checked, Staged, Watch
from clothwright.order.numbers import numbers_of
from clothwright.order.sides import (
    APART,
    alike,
    differing,
    level,
    of_both,
    sides_of,
    together,
)
from clothwright.order.together import disagreements
from clothwright.paper import Drafting, PaperError, Sheet, Step
from clothwright.rules import (
    Hand,
    House,
    Kind,
    Numbers,
    RuleError,
)
from clothwright.truing import Report, check_all
from clothwright.units import Unit, opening, pretty_length, retold, told_apart


@dataclass(frozen=True)
class Draft:
    """An order drafted and checked."""

    order: Order
    numbers: Numbers
    sheet: Sheet
    steps: tuple[Step, ...]
    report: Report
    read: frozenset[str]
    """Keys of the numbers that the draft and its checks have read."""

    findings: tuple[Finding, ...]
    """All findings: features' own checks, then walks, joints and the checklist."""

    left: "Draft | None" = None
    """The left side's own draft, turned over, where the sides differ; `numbers` and
    `steps` are then the right side's, and `sheet` has both."""

    apart: frozenset[str] = frozenset()
    """Codes of the pieces that differ on the two sides."""

    @cached_property
    def used(self) -> tuple[str, ...]:
        """Keys of the numbers that the draft and its checks rest on."""
        return self.numbers.behind(self.read)

    @property
    def failed(self) -> bool:
        """True when nothing may be cut so."""
        return any(f.severity is Severity.REFUSE for f in self.findings)

    def failures(self) -> tuple[str, ...]:
        """Sentences of every fault."""
        return tuple(str(f) for f in self.findings if f.severity is Severity.REFUSE)


_of_measures = lately(check_body)
"""What the measures of a body say of each other: bodies seldom change."""

GROWN = (
    "the rules are those of a grown body; a child is drafted by them only from about "
    "145 cm of height and 74 cm of bust"
)
"""Why a small child cannot be drafted: the ranges of its height and bust."""

_BARE = Sheet()
"""The table before anything is drafted."""


@dataclass
class Workroom:
    """Keeps the work of the last draft: a change redoes only what rests on it."""

    staged: list[Staged] = field(default_factory=list)
    checked: list[Checked] = field(default_factory=list)
    numbers: Numbers | None = None
    left: "Workroom | None" = None
    """Where the left side is drafted, when the two differ."""

    def draft(self, order: Order) -> Draft:
        """Draft an order. Raises OrderError with sentences for the user."""
        if order.feature("by hand"):
            from clothwright.order.styles import with_styles  # loads her own steps

            order = with_styles(order)
        resolve(order)
        measured = _of_measures(order.body)
        absurd = [f for f in measured if f.severity is Severity.REFUSE]
        if absurd:
            named = order.measures_place
            told = [f"{named}: {f}" for f in absurd]
            if order.wearer.child:
                told.insert(0, f"{order.place}: {GROWN}")
            raise OrderError(*told)
        if not any(f.code == APART for f in measured):
            self.left = None
            return self._half(order, measured)
        right, left = sides_of(order)
        self.left = self.left or Workroom()
        here = self._half(right, measured)
        try:
            left = alike(left, here.numbers)
            there = self.left._half(left, ())
            even = level(left, there.numbers, there.sheet, here.sheet)
            there = there if even is left else self.left._half(even, ())
        except OrderError as e:
            raise OrderError(*(f"left side: {s}" for s in e.sentences)) from e
        return _both(order, here, there)

    def _half(self, order: Order, measured: tuple[Finding, ...]) -> Draft:
        numbers = numbers_of(order, self.numbers)
        stages = _stages(order.features)
        staged = self._drafted(order, numbers, stages)
        sheet = staged[-1].sheet
        # what she cuts herself is checked as all paper: features know the table before
        features = sum(s.rank < Rank.BY_HAND for _, s in stages)
        with _told(order, order.place, "the finished draft"):
            checked = self._found(order, numbers, staged[features - 1].sheet)
            numbers.forget()
            joints = joints_of(order.features, sheet, numbers)
            report = check_all(sheet, joints, _SHOWN[order.unit])
        overruled = numbers.overruled()
        read = frozenset(numbers.read).union(
            *(s.ground.numbers.values for s in staged),
            *(c.ground.numbers.values for c in checked),
        )
        self.staged, self.checked, self.numbers = staged, checked, numbers
        return Draft(
            order,
            numbers,
            sheet,
            tuple(step for s in staged for step in s.steps),
            report,
            read,
            (
                *_of_use(measured, numbers, read),
                *(f for c in checked for f in c.findings),
                *(_overruled(h, k, numbers, order) for k, h in overruled.items()),
                *report.findings,
            ),
        )

    def _drafted(
        self,
        order: Order,
        numbers: Numbers,
        stages: Iterable[tuple[Feature | None, Stage]],
    ) -> list[Staged]:
        kinds = tuple(f.kind for f in order.features)
        out: list[Staged] = []
        sheet = _BARE
        for i, (feature, stage) in enumerate(stages):
            last = self.staged[i] if i < len(self.staged) else None
            whose = (feature,) if feature else order.features
            key = (kinds, stage.name, *(_settings(f) for f in whose))
            if last is not None and last.ground.holds(key, sheet, numbers):
                done = last.on(sheet)
            else:
                watch = Watch.begin(key, numbers, sheet)
                kind = feature.kind if feature else "seams"
                hand = Drafting(numbers, watch.sheet, kind)
                place = f"{order.place}, {kind}" if feature else order.place
                with _told(order, place, stage.name):
                    stage.apply(hand)
                done = Staged.of(watch, hand, last)
            out.append(done)
            sheet = done.sheet
        return out

    def _found(self, order: Order, numbers: Numbers, sheet: Sheet) -> list[Checked]:
        out: list[Checked] = []
        for i, feature in enumerate(order.features):
            key = (feature, order.unit)
            last = self.checked[i] if i < len(self.checked) else None
            if last is not None and last.ground.holds(key, sheet, numbers):
                out.append(last)
                continue
            watch = Watch.begin(key, numbers, sheet)
            found = [_retold(f, order) for f in feature.checks(numbers, watch.sheet)]
            found += _unusual(feature, order.unit)
            out.append(Checked(watch.ground(), tuple(found)))
        return out


def _both(order: Order, right: Draft, left: Draft) -> Draft:
    """Two sides that were drafted apart, on one table and checked as one garment."""
    apart = differing(right.sheet, left.sheet)
    if not apart:
        return replace(right, order=order)
    with _told(order, order.place, "both sides together"):
        sheet = together(right.sheet, left.sheet, apart, order.unit)
    whole = check_all(sheet, (), _SHOWN[order.unit])
    angles = (*right.report.angles, *left.report.angles)
    sides = tuple(of_both(right.findings, left.findings))
    said = {str(f) for f in (*right.findings, *left.findings)}
    findings = (*sides, *(f for f in whole.findings if str(f) not in said))
    report = Report(whole.walks, angles, findings)
    return replace(
        right,
        order=order,
        sheet=sheet,
        report=report,
        read=right.read | left.read,
        findings=findings,
        left=left,
        apart=apart,
    )


def draft(order: Order) -> Draft:
    """Draft an order once. Raises OrderError with sentences for the user."""
    return Workroom().draft(order)


def _of_use(
    measured: tuple[Finding, ...], numbers: Numbers, read: frozenset[str]
) -> list[Finding]:
    """What is found of measures that the draft rests on. How the two sides differ is
    always told."""
    if not measured:
        return []
    used = set(numbers.behind(read))

    def told(f: Finding) -> bool:
        if BUST in used:  # others witness that one of those used is wrong
            return not used.isdisjoint(f.data)
        # a skirt is not troubled with the bust, nor with what is judged by it
        return f.place in used and BUST not in f.data

    return [f for f in measured if f.code == APART or told(f)]


@lately
def _settings(feature: Feature) -> tuple[object, ...]:
    """What a feature's stages read from its model besides numbers."""
    numbers, others = _fields(type(feature))
    return (
        *[getattr(feature, f) is None for f in numbers],
        *[getattr(feature, f) for f in others],
    )


@cache
def _fields(kind: type[Feature]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Fields of a feature that are numbers, and the others."""
    numbers = tuple(kind.numbers())
    return numbers, tuple(f for f in kind.model_fields if f not in numbers)


def _stages(features: tuple[Feature, ...]) -> list[tuple[Feature | None, Stage]]:
    found: list[tuple[Feature | None, Stage]] = [
        (f, s) for f in features for s in f.stages()
    ]
    found.append((None, seams_of(features)))
    return sorted(found, key=lambda fs: fs[1].rank)


@contextmanager
def _told(order: Order, place: str, what: str) -> Iterator[None]:
    """What goes wrong with numbers and paper, as a sentence for the user."""
    try:
        yield
    except OrderError:
        raise
    except (RuleError, PaperError) as e:
        raise OrderError(_in_her_words(f"{place}: {e}", order)) from e
    except (ValueError, ArithmeticError, IndexError) as e:  # no meeting: no first one
        raise OrderError(_not_drawn(order, place, what)) from e


def _not_drawn(order: Order, place: str, what: str) -> str:
    """For geometry that gives out: what it says of points and curves helps nobody. The
    numbers of the order that are beyond the usual are named, or that she set where
    none is usual; of an order at its usual numbers the measures."""
    set_so = (
        (f.kind, field, number, getattr(f, field))
        for f in order.features
        for field, number in f.numbers().items()
    )
    far = [
        f'{number.name} ({field} of "{kind}")'
        for kind, field, number, value in set_so
        if value is not None
        and (number.usual is None or not number.usual[0] <= value <= number.usual[1])
    ]
    to_do = (
        f"put what is beyond the usual nearer to it: {', '.join(far)}"
        if far
        else "measure again, HT, B, W and H first"
    )
    return (
        f"{place}: {what} cannot be drawn with these numbers; a length or an angle of "
        f"it comes to nothing, so {to_do}"
    )


_SHOWN: Mapping[Unit, Callable[[float], str]] = {
    unit: partial(pretty_length, unit=unit) for unit in Unit
}


def _overruled(house: House, key: str, numbers: Numbers, order: Order) -> Finding:
    r = numbers.why(key)
    by = "the measures" if r.hand is Hand.TAKEN else "this order"
    return Finding(
        "H1",
        Severity.NOTE,
        f"{house.place}: {r.name} ({r.symbol}) is given in {by}, so the house rule "
        f"{house.text} is not used.",
        order.house_place,
        f"Take it out of {by} to use the house rule.",
        {"value": r.value},
    )


def _retold(finding: Finding, order: Order) -> Finding:
    sentence, to_do = (
        _in_her_words(text, order) for text in (finding.sentence, finding.to_do)
    )
    return replace(finding, sentence=sentence, to_do=to_do)


def _in_her_words(text: str, order: Order) -> str:
    """In the unit and in the settings of the order."""
    return in_settings(told_apart(retold(text, order.unit)), order.features)


@lately
def _unusual(feature: Feature, unit: Unit) -> tuple[Finding, ...]:
    """Warnings for numbers that are allowed but outside the usual."""
    return tuple(_beyond_usual(feature, unit))


def _beyond_usual(feature: Feature, unit: Unit) -> Iterable[Finding]:
    for name, number in feature.numbers().items():
        value = getattr(feature, name)
        if value is None or number.usual is None:
            continue
        low, high = number.usual
        default = number.default(unit)  # in inches it may lie a hair beyond
        if default is not None:
            low, high = min(low, default), max(high, default)
        if low - 1e-6 <= value <= high + 1e-6:
            continue
        is_length = number.kind is Kind.LENGTH

        def show(v: float, is_length: bool = is_length) -> str:
            return pretty_length(v, unit) if is_length else f"{v:g}"

        yield Finding(
            "usual",
            Severity.WARN,
            f"{opening(number.name)} is {show(value)}; usual is "
            f"{show(low)} to {show(high)}.",
            number.symbol,
            "Look whether that is meant.",
            {number.key: float(value)},
        )


def resolve(order: Order) -> None:
    """Check what features need of each other. Raises OrderError."""
    faults = [d.told(order.place) for d in disagreements(order.features)]
    if faults:
        raise OrderError(*faults)

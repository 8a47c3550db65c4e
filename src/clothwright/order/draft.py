"""Drafting an order: features in their order, numbers from the graph, then checks.

Each stage is a pure function of the numbers that it reads and the table it is given,
so its result is kept; when something changes, the draft is redone from the first stage
that the change touches.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

from clothwright.body import check_body, estimates
from clothwright.features import Feature, Stage
from clothwright.features.garment_joints import joints
from clothwright.features.garment_seams import STAGE as SEAMS
from clothwright.features.shoulder import NO_TIGHTENING
from clothwright.findings import Finding, Severity
from clothwright.order.file import Order, OrderError
from clothwright.order.together import disagreements
from clothwright.paper import Drafting, PaperError, Sheet, Step
from clothwright.rules import (
    Given,
    Hand,
    House,
    Kind,
    Numbers,
    Rule,
    RuleError,
)
from clothwright.rules.house import HouseError, read_house
from clothwright.truing import Report, check_all
from clothwright.units import Unit, pretty_length, retold


@dataclass(frozen=True)
class Draft:
    """An order drafted and checked."""

    order: Order
    numbers: Numbers
    sheet: Sheet
    steps: tuple[Step, ...]
    report: Report
    used: tuple[str, ...]
    """Keys of the numbers that the draft and its checks rest on."""

    findings: tuple[Finding, ...]
    """All findings: features' own checks, then walks, joints and the checklist."""

    @property
    def failed(self) -> bool:
        """True when nothing may be cut so."""
        return any(f.severity is Severity.REFUSE for f in self.findings)

    def failures(self) -> tuple[str, ...]:
        """Sentences of every fault."""
        return tuple(str(f) for f in self.findings if f.severity is Severity.REFUSE)


@dataclass
class _Kept:
    key: tuple[object, ...]
    before: Sheet
    reads: dict[str, float]
    after: Sheet
    steps: list[Step]


@dataclass
class Workroom:
    """Keeps the last draft's stages, so that a change redraws only what follows."""

    kept: list[_Kept] = field(default_factory=list)

    def draft(self, order: Order) -> Draft:
        """Draft an order. Raises OrderError with sentences for the user."""
        resolve(order)
        measured = check_body(order.body)
        absurd = [f for f in measured if f.severity is Severity.REFUSE]
        if absurd:
            raise OrderError(*(f"{f.code}: {f}" for f in absurd))
        numbers = numbers_of(order)
        kinds = tuple(f.kind for f in order.features)
        sheet, steps = Sheet(), list[Step]()
        read: set[str] = set()
        fresh: list[_Kept] = []
        same = True
        for i, (feature, stage) in enumerate(_stages(order.features)):
            key = (kinds, stage.name, _settings(feature))
            old = self.kept[i] if same and i < len(self.kept) else None
            if (
                old is not None
                and old.key == key
                and (i == 0 or old.before is sheet)
                and _unchanged(old.reads, numbers)
            ):
                kept = old
            else:
                same = False
                kept = _work(key, stage, feature, numbers, sheet, order)
            fresh.append(kept)
            sheet = kept.after
            steps += kept.steps
            read |= kept.reads.keys()
        self.kept = fresh
        numbers.read.clear()
        report, found = _checked(order, numbers, sheet)
        read |= numbers.read
        return Draft(
            order,
            numbers,
            sheet,
            tuple(steps),
            report,
            numbers.behind(read),
            (*measured, *found, *report.findings),
        )


def draft(order: Order) -> Draft:
    """Draft an order once. Raises OrderError with sentences for the user."""
    return Workroom().draft(order)


def _settings(feature: Feature | None) -> tuple[object, ...]:
    """What a feature's stages read from its model besides numbers."""
    if feature is None:
        return ()
    named = feature.numbers()
    return (
        feature.kind,
        *(
            (n, v is None if n in named else v)
            for n, v in ((n, getattr(feature, n)) for n in type(feature).model_fields)
        ),
    )


def _unchanged(reads: Mapping[str, float], numbers: Numbers) -> bool:
    try:
        return all(numbers[k] == v for k, v in reads.items())
    except RuleError:
        return False


def _stages(features: Iterable[Feature]) -> list[tuple[Feature | None, Stage]]:
    found: list[tuple[Feature | None, Stage]] = [
        (f, s) for f in features for s in f.stages()
    ]
    found.append((None, SEAMS))
    return sorted(found, key=lambda fs: fs[1].rank)


def _work(
    key: tuple[object, ...],
    stage: Stage,
    feature: Feature | None,
    numbers: Numbers,
    sheet: Sheet,
    order: Order,
) -> _Kept:
    numbers.read.clear()
    hand = Drafting(numbers, sheet, feature.kind if feature else "seams")
    place = f"{order.place}, {feature.kind}" if feature else order.place
    try:
        stage.apply(hand)
    except (RuleError, PaperError) as e:
        raise OrderError(retold(f"{place}: {e}", order.unit)) from e
    except (ValueError, ArithmeticError) as e:
        raise OrderError(_not_drawn(place, stage.name)) from e
    reads = {k: numbers[k] for k in sorted(numbers.read)}
    return _Kept(key, sheet, reads, hand.sheet, hand.steps)


def _not_drawn(place: str, what: str) -> str:
    """For geometry that gives out: what it says of points and curves helps nobody."""
    return (
        f"{place}: {what} cannot be drawn with these numbers; a length or an angle of "
        "it comes to nothing, so put the number altered last nearer to its usual value"
    )


_SHOWN: Mapping[Unit, Callable[[float], str]] = {
    unit: partial(pretty_length, unit=unit) for unit in Unit
}


def _checked(
    order: Order, numbers: Numbers, sheet: Sheet
) -> tuple[Report, list[Finding]]:
    """What the walk and the joints say, and what the features say."""
    fmt = _SHOWN[order.unit]
    found: list[Finding] = []
    try:
        for f in order.features:
            found += (_retold(c, order.unit) for c in f.checks(numbers, sheet))
            found += unusual(f, order.unit)
        words = {word for f in order.features for word in f.provides()}
        report = check_all(sheet, joints(sheet, numbers, words), fmt)
    except (RuleError, PaperError) as e:
        raise OrderError(retold(f"{order.place}: {e}", order.unit)) from e
    except (ValueError, ArithmeticError) as e:
        raise OrderError(_not_drawn(order.place, "the finished draft")) from e
    found += (_overruled(h, k, numbers, order) for k, h in numbers.overruled().items())
    return report, found


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


def _retold(finding: Finding, unit: Unit) -> Finding:
    return replace(
        finding,
        sentence=retold(finding.sentence, unit),
        to_do=retold(finding.to_do, unit),
    )


def unusual(feature: Feature, unit: Unit) -> Iterable[Finding]:
    """Warnings for numbers that are allowed but outside the usual."""
    for name, number in feature.numbers().items():
        value = getattr(feature, name)
        if value is None or number.usual is None:
            continue
        low, high = number.usual
        if low - 1e-6 <= value <= high + 1e-6:
            continue
        is_length = number.kind is Kind.LENGTH

        def show(v: float, is_length: bool = is_length) -> str:
            return pretty_length(v, unit) if is_length else f"{v:g}"

        yield Finding(
            "usual",
            Severity.WARN,
            f"{number.name[:1].upper()}{number.name[1:]} is {show(value)}; usual is "
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


def rules_of(order: Order) -> dict[str, Rule]:
    """Every rule of an order by key; a later page replaces a rule of an earlier."""
    rules: dict[str, Rule] = dict(estimates(order.estimates).rules)
    rules.update(NO_TIGHTENING.rules)
    for f in sorted(order.features, key=lambda f: f.page):
        for table in f.tables():
            rules.update(table.rules)
    return rules


def numbers_of(order: Order) -> Numbers:
    """The order's numbers, house rules in place. Raises OrderError."""
    rules = rules_of(order)
    given = _given(order)
    house: dict[str, House] = {}
    if order.house_text:
        try:
            house = read_house(
                order.house_text,
                order.house_place,
                _replaceable(rules, given, order.features),
                [g.key for g in given],
            )
        except HouseError as e:
            raise OrderError(*str(e).splitlines()) from e
    kept = [g for g in given if not (g.key in house and g.hand is Hand.DEFAULT)]
    numbers = Numbers(rules, kept, house)
    for key in house:
        try:
            numbers[key]
        except RuleError as e:
            raise OrderError(retold(f"{order.house_place}: {e}", order.unit)) from e
    return numbers


def _given(order: Order) -> list[Given]:
    """Measures, choices and defaults, each number once: a choice outranks a default,
    and of two defaults the later page's holds."""
    found = {g.key: g for g in order.body.given()}
    for f in sorted(order.features, key=lambda f: f.page):
        for g in f.given(order.unit):
            known = found.get(g.key)
            if known is None or g.hand is not Hand.DEFAULT or known.hand is g.hand:
                found[g.key] = g
    return list(found.values())


def _replaceable(
    rules: Mapping[str, Rule], given: Iterable[Given], features: Iterable[Feature]
) -> dict[str, Rule]:
    """What a house file may replace: rules, and the defaults of features; each within
    the bounds that an order has to keep to."""
    out = dict(rules)
    for g in given:
        if g.hand is Hand.DEFAULT and g.key not in out:
            value = g.value
            out[g.key] = Rule(
                g.key, g.symbol, g.name, g.kind, g.source, (), lambda v=value: v
            )
    for f in features:
        for number in f.numbers().values():
            if number.key in out:
                rule = out[number.key]
                low = rule.low if number.low is None else number.low
                high = rule.high if number.high is None else number.high
                out[number.key] = replace(rule, low=low, high=high)
    return out

"""Random valid orders, made of the registry alone: features, settings and amounts.

An order begins with one feature; whatever the features say they need is added, until
all go together. So a feature that is registered is in them by itself. Nearly all
amounts are the usual ones or within what is usual; one or two of an order may lie
anywhere in their bounds.
"""

import typing
from collections.abc import Collection, Iterable, Iterator, Sequence
from enum import Enum
from functools import cache
from random import Random
from types import UnionType

from pydantic import ValidationError

from bodies import P92, THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.features import KINDS, Feature, Number
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import ALTERATIONS
from clothwright.order import Order, OrderError, draft
from clothwright.order.together import disagreements
from clothwright.rules import Kind
from clothwright.units import Unit
from orders import order

Kinds = tuple[type[Feature], ...]

FEATURES: Kinds = tuple(KINDS.values())
"""Every feature, in the order in which they are told."""

TRIES = 400
"""Orders begun before it is said that a feature goes with nothing."""

FEW = 12
"""Orders tried on a standard body."""

SETTINGS = 6
"""Settings tried of a feature that is needed and may clash as it is set."""

MOST_ADDED = 12
"""Features tried beside what an order needs."""

ASK_MORE = {("bodice block", "measured_arcs"), ("bodice block", "neck_rise_taken")}
"""Settings that ask for a measure which no public survey has."""


def combination(rng: Random, first: type[Feature] | None = None) -> tuple[Feature, ...]:
    """A random order with `first` in it that a standard body gets, or, where none of a
    few does, one that the features' needs allow."""
    for _ in range(FEW):
        parts = together(rng, first)
        if passes(parts):
            break
    return parts


def passes(parts: tuple[Feature, ...], body: Body = P92, unit: Unit = Unit.CM) -> bool:
    """True when a body, the standard one, gets the order."""
    try:
        return not draft(order(body, parts, unit=unit)).failed
    except OrderError:
        return False


def others() -> tuple[tuple[Body, Unit], ...]:
    """Bodies beside the standard one, a full one in inches, that get what is alone."""
    return ((ansur_whole()[130], Unit.IN), (THEA, Unit.CM))


def together(rng: Random, first: type[Feature] | None = None) -> tuple[Feature, ...]:
    """A random order with `first` in it that the features' needs allow."""
    begun = first or rng.choice(FEATURES)
    for _ in range(TRIES):
        parts = _completed((set_at_random(begun, rng),), rng)
        if parts is not None:
            break
    else:
        raise AssertionError(f"{name(begun)} goes into no order")
    for kind in rng.sample(FEATURES, rng.randint(0, MOST_ADDED)):
        if kind not in map(type, parts):
            more = _completed((*parts, set_at_random(kind, rng)), rng)
            parts = more or parts
    return _in_order(_bolder(parts, rng))


def alone(first: type[Feature]) -> tuple[Feature, ...]:
    """The least order with a feature that several bodies get: at usual settings and
    amounts, else at usual amounts, else with the least that is otherwise."""
    for usual, amounts in ((True, True), (False, True), (False, False)):
        found: list[tuple[Feature, ...]] = []
        for seed in range(100 if usual else 400):
            rng = Random(seed)
            begun = set_at_random(first, rng) if first is Fitting else usual_of(first)
            parts = _completed((begun,), rng, usual=usual)
            if parts is not None:
                plain = map(_at_usual_amounts, parts) if amounts else parts
                found.append(_in_order(plain))
        for parts in sorted(dict.fromkeys(found), key=_size if usual else _telling):
            if passes(parts) and all(passes(parts, b, u) for b, u in others()):
                return parts
    raise AssertionError(f"no body gets an order with {name(first)}")


def _at_usual_amounts(part: Feature) -> Feature:
    """The same settings; a fitting stays, its amounts are what it is about."""
    if isinstance(part, Fitting):
        return part
    numbers = part.numbers()
    return type(part).model_validate({k: v for k, v in part if k not in numbers})


def _size(parts: tuple[Feature, ...]) -> int:
    return len(parts)


def _telling(parts: tuple[Feature, ...]) -> int:
    """How much there is to tell: of few features, few of them set otherwise."""
    return len(told(parts))


def _in_order(parts: Iterable[Feature]) -> tuple[Feature, ...]:
    return tuple(sorted(parts, key=lambda f: FEATURES.index(type(f))))


def name(kind: type[Feature]) -> str:
    """The word by which an order names a feature."""
    return str(kind.model_fields["kind"].default)


# -- the orders of a survey -----------------------------------------------------------
ALONE, RAW, COMBINED = "alone", "unsifted", "combination"


def features_of(job: tuple[str, int]) -> tuple[str, tuple[Feature, ...]]:
    """The order of a job: a feature alone, or a combination with each first in turn."""
    what, i = job
    kind = FEATURES[i % len(FEATURES)]
    if what == ALONE:
        return f"alone, {name(kind)}", alone(kind)
    made = together if what == RAW else combination
    return f"{what}, {i}", made(Random(i), kind)


def on_body(features: tuple[Feature, ...], i: int, k: int) -> Order:
    """The order on one woman: units and estimates in turn."""
    unit, rules = list(Unit)[(i + k) % 2], list(RuleSet)[k // 2 % 2]
    return order(ansur_whole()[k], features, unit=unit, estimates=rules)


# -- what goes together ----------------------------------------------------------------
def _completed(
    parts: tuple[Feature, ...], rng: Random, *, usual: bool = False
) -> tuple[Feature, ...] | None:
    """The features and whatever they need, or None when something clashes."""
    if _clashing(parts):
        return None
    given = {word for f in parts for word in f.provides()}
    forbidden = {word for f in parts for word in f.forbids()}
    for _ in range(20):
        word = next(_wanting(parts, given), None)
        if word is None:
            assert not disagreements(parts), disagreements(parts)
            return parts
        taken = {type(f) for f in parts}
        givers = [k for k in _giving(word) if k not in taken]
        for kind in rng.sample(givers, len(givers)):
            tried = (
                _set_to_give(kind, word, rng, usual=usual) for _ in range(SETTINGS)
            )
            fits = (
                f
                for f in tried
                if forbidden.isdisjoint(f.provides()) and given.isdisjoint(f.forbids())
            )
            new = next(fits, None)
            if new is not None:
                parts = (*parts, new)
                given.update(new.provides())
                forbidden.update(new.forbids())
                break
        else:
            return None
    return None


def _wanting(parts: Sequence[Feature], given: Collection[str]) -> Iterator[str]:
    """Words that are needed and given by none, each where it is first asked for."""
    for f in parts:
        yield from (w for w in f.wants() if w not in given)
    yield from (w for w in ("block",) if w not in given)
    for f in parts:
        yield from (w for w in f.makes_up if w not in given)


def _clashing(parts: Sequence[Feature]) -> bool:
    return any(
        word in g.provides()
        for f in parts
        for word in f.forbids()
        for g in parts
        if g is not f
    )


@cache
def _giving(word: str) -> Kinds:
    """Features that give a word as they are, or as they may be set."""
    return tuple(k for k in FEATURES if word in k.gives or word in _may_give(k))


@cache
def _may_give(kind: type[Feature]) -> frozenset[str]:
    rng = Random(0)
    return frozenset().union(*(set_at_random(kind, rng).provides() for _ in range(60)))


def _set_to_give(
    kind: type[Feature], word: str, rng: Random, *, usual: bool
) -> Feature:
    if usual and word in usual_of(kind).provides():
        return usual_of(kind)
    while True:
        new = set_at_random(kind, rng)
        if word in new.provides():
            return new


@cache
def usual_of(kind: type[Feature]) -> Feature:
    """A feature at its usual settings and amounts."""
    return kind.model_validate({"kind": name(kind)})


# -- how one is set --------------------------------------------------------------------
def set_at_random(kind: type[Feature], rng: Random) -> Feature:
    """A feature with its choices at random, and amounts as they are usual."""
    while True:
        values = {"kind": name(kind), **dict(_choices(kind, rng))}
        for field, number in kind.numbers().items():
            if number.usual is not None and rng.random() < 0.25:
                values[field] = _between(number, number.usual, rng)
        try:
            return kind.model_validate(values)
        except ValidationError:
            continue


def _choices(kind: type[Feature], rng: Random) -> Iterator[tuple[str, object]]:
    if kind is Fitting:
        seen = rng.sample(ALTERATIONS, rng.choice((1, 1, 2)))
        yield "alteration", tuple(a(by=round(rng.uniform(*a.usual), 2)) for a in seen)
        return
    for field, words in _settings(kind):
        yield field, rng.choice(words)


@cache
def _settings(kind: type[Feature]) -> tuple[tuple[str, tuple[object, ...]], ...]:
    """The fields that are a choice, each with what it may be."""
    found = ((k, tuple(_words(i.annotation))) for k, i in kind.model_fields.items())
    return tuple((k, w) for k, w in found if w and (name(kind), k) not in ASK_MORE)


def _words(annotation: object) -> Iterator[object]:
    """What a setting may be, when it is a choice of words or yes and no."""
    if typing.get_origin(annotation) in (typing.Union, UnionType):
        told = [tuple(_words(a)) for a in typing.get_args(annotation)]
        if any(told):
            yield None
        for words in told:
            yield from words
    elif isinstance(annotation, type) and issubclass(annotation, Enum):
        yield from annotation
    elif annotation is bool:
        yield from (False, True)


def _bolder(parts: Sequence[Feature], rng: Random) -> tuple[Feature, ...]:
    """The same with none, one or two of their amounts anywhere in their bounds."""
    out = list(parts)
    numbered = [(i, k) for i, f in enumerate(parts) for k in f.numbers()]
    count = min(rng.choice((0, 0, 1, 1, 2)), len(numbered))
    for i, field in rng.sample(numbered, count):
        number = parts[i].numbers()[field]
        low, high = number.low, number.high
        assert low is not None and high is not None, number.name
        value = rng.choice((low, high, *[_between(number, (low, high), rng)] * 4))
        try:
            new = type(out[i]).model_validate({**dict(out[i]), field: value})
        except ValidationError:
            continue
        if not disagreements([*out[:i], new, *out[i + 1 :]]):
            out[i] = new
    return tuple(out)


def _between(number: Number, bounds: tuple[float, float], rng: Random) -> float:
    digits = 0 if number.kind is Kind.COUNT else 2
    return round(rng.uniform(*bounds), digits)


def told(features: Iterable[Feature]) -> str:
    """An order in a line: each feature with what is not at its usual."""
    return "; ".join(_told(f) for f in features)


def _told(f: Feature) -> str:
    usual = usual_of(type(f))
    own = [
        f"{k} {v.value if isinstance(v, Enum) else v}"
        for k, v in f
        if v != getattr(usual, k)
    ]
    return f"{f.kind} ({', '.join(own)})" if own else f.kind

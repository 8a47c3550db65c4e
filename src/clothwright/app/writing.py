"""The writing line: what she types is read as a feature with its words and numbers.

It offers only what exists, shows what it understood, and never guesses: where several
features may be meant she is asked, and a word that is not known stops it.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cache
from typing import Any

from clothwright.app.offers import offer, offers
from clothwright.app.words import Reading, label, say_choice, say_size
from clothwright.features import KINDS, Feature
from clothwright.features.called import CALLED
from clothwright.rules import Kind
from clothwright.units import LengthError, nearest, parse_length, parse_plain

_SIZE = re.compile(r"\d+\s+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[¼½¾⅛⅜⅝⅞]|\d+[¼½¾⅛⅜⅝⅞]")
_UNITS = {"in", "inch", "inches", "cm", '"', "″"}
_SMALL = {"a", "an", "the", "and", "with", "of", "add", "new"}
_SIZED = {"deep", "long", "wide"}
MOST = 8
"""Features that are offered at once."""


@dataclass(frozen=True)
class _Heard:
    """A feature that accounts for words of the line."""

    kind: str
    own: frozenset[str]
    """Words that are of its name."""

    named: frozenset[str]
    """Those, and words of its title and of what it is called elsewhere."""

    chosen: tuple[tuple[str, str, Any], ...]
    """Its words that are chosen: the field, as it is said, and the value."""

    all: bool
    """No word is left over."""

    over: int
    """How many words its name has besides."""


def understood(r: Reading, text: str) -> dict[str, Any]:
    """What a line asks for: the change to make, and how it was understood; or what it
    could mean."""
    words = text.strip().lower()
    if not words:
        return {"say": "", "offers": []}
    sizes = [m.group() for m in _SIZE.finditer(words)]
    typed = _tokens(_SIZE.sub(" ", words))
    tokens = [t for t in typed if not (sizes and t in _SIZED)]
    heard = [h for h in (_hear(kind, tokens) for kind in KINDS) if h.named or h.chosen]
    whole = [h for h in heard if h.all] if tokens else []
    called = {
        k for name, ks in CALLED.items() if _tokens(name) == tuple(tokens) for k in ks
    }
    if called:
        whole = [h for h in whole if h.kind in called or set(tokens) <= h.own]
    meant = _meant(r.features, whole)
    if meant is not None:
        return _change(r, meant, sizes)
    if whole:
        likely = sorted(whole, key=lambda h: (not h.named, h.over))
        given = {h.kind: {field: to for field, _, to in h.chosen} for h in likely}
        found = offers(r.features, given, given)[:MOST]
        return {"say": "Which of these?", "offers": found}
    return _not_known(r, text, tokens, heard)


def _not_known(
    r: Reading, text: str, tokens: Sequence[str], heard: Sequence[_Heard]
) -> dict[str, Any]:
    """What is said of a line with a word that no feature knows."""
    begun = [k for k in KINDS if any(_begins((k,), t) for t in tokens)]
    most = max((len(h.named) for h in heard), default=0)
    named = [h.kind for h in heard if h.named and len(h.named) == most]
    also = [k for k in KINDS if any(_begins(_names(k), t) for t in tokens)]
    near = nearest(text, KINDS, CALLED) if tokens else ()
    first = dict.fromkeys((*named, *begun))
    then = [k for k in dict.fromkeys((*also, *near)) if k not in first]
    found = (offers(r.features, first) + offers(r.features, then))[:MOST]
    stray = [t for t in tokens if named and not any(t in h.named for h in heard)]
    if not found:
        say = "That is not on the shelf."
    elif stray and not any(_begins(_names(k), stray[-1]) for k in KINDS):
        say = f"“{stray[0]}” is not known of it. Is it one of these?"
    else:
        say = "Is it one of these?"
    return {"say": say, "offers": found}


def _meant(features: Sequence[Feature], whole: Sequence[_Heard]) -> _Heard | None:
    """The one that is meant: its very name, else what can be chosen of one that stands
    on the slip, else the only one that goes with the rest; None where several may be.
    """
    have = {f.kind for f in features}
    exact = [h for h in whole if h.over == 0]
    there = [h for h in whole if h.kind in have and h.chosen]
    named = [h for h in whole if h.named] or list(whole)
    fit = [h for h in named if offer(features, h.kind).fits]
    both = [h for h in exact if h.kind in have]
    for some in (exact, both, there, named, fit):
        if len(some) == 1:
            return some[0]
    return None


def _change(r: Reading, h: _Heard, sizes: Sequence[str]) -> dict[str, Any]:
    """The change of a line that is understood."""
    model = KINDS[h.kind]
    given: dict[str, Any] = {field: to for field, _, to in h.chosen}
    said = [h.kind, *(word for _, word, _ in h.chosen)]
    slots = _slots(model)
    if len(sizes) > len(slots):
        return {
            "say": f"A {h.kind} has no place for {sizes[len(slots)]}.",
            "offers": [],
        }
    for size, (field, kind_of) in zip(sizes, slots, strict=False):
        try:
            if kind_of is Kind.LENGTH:
                given[field] = f"{size} {r.unit.value}"
                told = say_size(parse_length(given[field], r.unit), kind_of, r.unit)
            else:
                given[field] = parse_plain(size)
                told = say_size(parse_plain(size), kind_of, r.unit)
        except LengthError as e:
            return {"say": str(e), "offers": []}
        said.append(f"{label(model, field)} {told}")
    have = {f.kind for f in r.features}
    if h.kind in have and not given:
        return {
            "say": f"On the slip already: {h.kind}.",
            "show": h.kind,
            "offers": [],
        }
    out = {
        "say": ", ".join(said),
        "do": _ops(h.kind, given, have),
        "offers": [],
    }
    if h.kind not in have:
        new = offer(r.features, h.kind, given)
        out["but"] = new.against or new.asks
    return out


def _ops(kind: str, given: Mapping[str, Any], have: set[str]) -> list[dict[str, Any]]:
    if kind not in have:
        return [{"do": "add", "kind": kind, "with": given}]
    model = KINDS[kind]
    return [
        {
            "do": "set" if f in model.numbers() else "choose",
            "of": f"{kind}.{f}",
            "to": v,
        }
        for f, v in given.items()
    ]


def _hear(kind: str, tokens: Sequence[str]) -> _Heard:
    """The words of a line that this feature accounts for."""
    model = KINDS[kind]
    own = _tokens(kind)
    names = {*own, own[-1].removesuffix("line")}
    mine = frozenset(t for t in tokens if t in names)
    left = [t for t in tokens if t not in mine]
    chosen = []
    for field, word, to in _choices(model):
        taken = _tokens(word)
        if taken and all(t in left for t in taken):
            chosen.append((field, word, to))
            left = [t for t in left if t not in taken]
    also = {*_called(kind, tokens), *_tokens(model.title)}
    named = mine.union(t for t in tokens if t in also)
    stray = [t for t in left if t not in named]
    over = [w for w in own if not {w, w.removesuffix("line")} & named]
    return _Heard(kind, mine, named, tuple(chosen), not stray, len(over))


def _called(kind: str, tokens: Sequence[str]) -> set[str]:
    """Words of the line that call a feature by another name."""
    said = " ".join(tokens)
    out: set[str] = set()
    for name, kinds in CALLED.items():
        words = _tokens(name)
        if kind in kinds and f" {' '.join(words)} " in f" {said} ":
            out |= set(words)
    return out


@cache
def _names(kind: str) -> tuple[str, ...]:
    """What it is called: its name, its title, its other names and its choices."""
    also = [name for name, kinds in CALLED.items() if kind in kinds]
    return (kind, KINDS[kind].title, *also, *(w for _, w, _ in _choices(KINDS[kind])))


def _begins(names: Sequence[str], token: str) -> bool:
    """Whether a word of these names begins so."""
    if len(token) < 2:
        return False
    return any(w.startswith(token) for name in names for w in _tokens(name))


@cache
def _tokens(text: str) -> tuple[str, ...]:
    """Its words, in the singular, without small ones and units."""
    parts = re.split(r"[^\w″\"]+", text.lower())
    words = [w for w in parts if w and w not in _UNITS | _SMALL]
    return tuple(w.removesuffix("s") if len(w) > 3 else w for w in words)


@cache
def _choices(model: type[Feature]) -> list[tuple[str, str, Any]]:
    out = []
    for field, info in model.model_fields.items():
        kind = info.annotation
        if isinstance(kind, type) and issubclass(kind, Enum):
            out += [(field, say_choice(w), w.value) for w in kind]
    return out


def _slots(model: type[Feature]) -> list[tuple[str, Kind]]:
    """Numbers in the order in which the sentence names them."""
    numbers = model.numbers()
    named = re.findall(r"\{(\w+)\}", model.sentence)
    return [(f, numbers[f].kind) for f in named if f in numbers]

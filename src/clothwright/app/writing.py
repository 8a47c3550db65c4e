"""The writing line: what she types is read as a feature with its words and numbers.

It offers only what exists, shows what it understood, and never guesses: a word that is
not known stops it.
"""

import re
from enum import Enum
from typing import Any

from clothwright.app.words import Reading, say_choice, say_size
from clothwright.features import KINDS, Feature
from clothwright.rules import Kind
from clothwright.units import LengthError, parse_length, parse_plain

_SIZE = re.compile(r"\d+\s+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[¼½¾⅛⅜⅝⅞]|\d+[¼½¾⅛⅜⅝⅞]")
_UNITS = {"in", "inch", "inches", "cm", '"', "″"}
_SMALL = {"a", "an", "the", "and", "with", "of", "deep", "long", "wide", "add", "new"}


def understood(r: Reading, text: str) -> dict[str, Any]:
    """What a line asks for: the change to make, and how it was understood; or what it
    could mean."""
    words = text.strip().lower()
    have = {f.kind for f in r.features}
    if not words:
        return {"say": "", "offers": _offers(have, [])[0]}
    sizes = [m.group() for m in _SIZE.finditer(words)]
    rest = _SIZE.sub(" ", words)
    tokens = [t for t in re.split(r"[^\w″\"]+", rest) if t and t not in _UNITS | _SMALL]
    found = _feature(tokens, have)
    if found is None:
        offers, near = _offers(have, tokens)
        return {
            "say": "Is it one of these?" if near else "That is not on the shelf.",
            "offers": offers,
        }
    kind, left = found
    model = KINDS[kind]
    given: dict[str, Any] = {}
    said: list[str] = [kind]
    for field, word, to in _choices(model):
        taken = [t for t in word.lower().split() if t not in _SMALL]
        if taken and all(t in left for t in taken):
            given[field] = to
            said.append(word)
            left = [t for t in left if t not in taken]
    unknown = [t for t in left if t not in kind.split()]
    if unknown:
        return {
            "say": f"“{unknown[0]}” is not known of a {kind}.",
            "offers": _offers(have, kind.split())[0],
        }
    for size, (field, kind_of) in zip(sizes, _slots(model), strict=False):
        try:
            if kind_of is Kind.LENGTH:
                given[field] = f"{size} in" if r.unit.value == "in" else f"{size} cm"
                said.append(
                    say_size(parse_length(given[field], r.unit), kind_of, r.unit)
                )
            else:
                given[field] = parse_plain(size)
                said.append(say_size(parse_plain(size), kind_of, r.unit))
        except LengthError as e:
            return {"say": str(e), "offers": []}
    if len(sizes) > len(_slots(model)):
        return {"say": f"A {kind} has no place for {sizes[-1]}.", "offers": []}
    return {"say": ", ".join(said), "do": _change(kind, given, have), "offers": []}


def _change(kind: str, given: dict[str, Any], have: set[str]) -> list[dict[str, Any]]:
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


def _feature(tokens: list[str], have: set[str]) -> tuple[str, list[str]] | None:
    """The feature whose name has most of the words, and the words that are left."""
    best: tuple[int, int, str] | None = None
    for kind, model in KINDS.items():
        names = set(kind.split()) | {_short(kind)}
        hits = sum(any(_same(t, n) for n in names) for t in tokens)
        by_choice = sum(
            all(t in tokens for t in word.lower().split() if t not in _SMALL)
            for _, word, _ in _choices(model)
            if len(word) > 1
        )
        if hits:
            score = (2 * hits + by_choice - len(names) // 3, int(kind in have), kind)
            if best is None or score[:2] > best[:2]:
                best = score
    if best is None:
        return None
    kind = best[2]
    names = set(kind.split()) | {_short(kind)}
    return kind, [t for t in tokens if not any(_same(t, n) for n in names)]


def _short(kind: str) -> str:
    """A neckline is asked for as a neck, a facing as facings."""
    return kind.split()[-1].removesuffix("line")


def _same(a: str, b: str) -> bool:
    return a.removesuffix("s") == b.removesuffix("s")


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


def _offers(have: set[str], typed: list[str]) -> tuple[list[dict[str, Any]], bool]:
    """Features that could be written, those first whose names have a word that begins
    as one that is typed; and whether there are such."""
    out = []
    for kind, model in KINDS.items():
        if kind not in have:
            near = sum(any(n.startswith(t) for n in kind.split()) for t in typed)
            out.append((-near, {"say": kind, "help": model.title, "kind": kind}))
    out.sort(key=lambda x: x[0])
    return [o for _, o in out], bool(out and out[0][0])

"""What features need of each other, and what to do when an order lacks it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from clothwright.features import KINDS, Feature


@dataclass(frozen=True)
class Disagreement:
    """Something that cannot go together, with the ways out."""

    kind: str
    """The feature that says so; empty when the whole order lacks something."""

    why: str
    """A sentence without a full stop."""

    add: tuple[str, ...] = ()
    """Kinds of features of which one, added, would mend it."""

    leave: tuple[str, ...] = ()
    """Kinds of features which, left off, would mend it."""

    def told(self, place: str) -> str:
        """The sentence with its place."""
        if not self.kind:
            return f"{place}: {self.why}"
        others = ", ".join(k for k in self.leave if k != self.kind)
        if others and not self.add:
            return f"{place}, {self.kind} does not go with {others}: {self.why}"
        return f"{place}, {self.kind}: {self.why}"


def disagreements(features: Iterable[Feature]) -> tuple[Disagreement, ...]:
    """All that does not go together; empty when everything does."""
    features = tuple(features)
    given: dict[str, list[Feature]] = {}
    for f in features:
        for word in f.provides():
            given.setdefault(word, []).append(f)
    whole = dict(_EVERY_ORDER)
    for f in features:
        whole |= f.makes_up
    mended = _mended(features, given)
    out = [
        Disagreement("", why, add=_giving(word))
        for word, why in whole.items()
        if word not in given and word not in mended
    ]
    for f in features:
        for word, why in f.wants().items():
            if word not in given:
                leave = (f.kind,)
                out.append(Disagreement(f.kind, why, add=_giving(word), leave=leave))
        if not given.keys().isdisjoint(f.forbids()):
            out += _clashes(f, features, given)
    return tuple(out)


def _clashes(
    f: Feature, features: tuple[Feature, ...], given: dict[str, list[Feature]]
) -> Iterator[Disagreement]:
    for word, why in f.forbids().items():
        if word not in given:
            continue
        others = [g for g in given[word] if g is not f]
        # said once, by the later of the two, when both give and forbid the same
        mutual = word in f.provides()
        if others and not any(
            mutual and features.index(g) > features.index(f) and word in g.forbids()
            for g in others
        ):
            leave = (*(g.kind for g in others), f.kind)
            yield Disagreement(f.kind, why, leave=leave)


def _mended(
    features: tuple[Feature, ...], given: Mapping[str, list[Feature]]
) -> set[str]:
    """Words that come with what a feature asks for, where that goes with the rest: they
    are not asked for twice."""
    asked = (word for f in features for word in f.wants() if word not in given)
    fits = (
        KINDS[kind]
        for word in asked
        for kind in _giving(word)
        if set(KINDS[kind].needs) <= given.keys()
        and not set(KINDS[kind].clashes) & given.keys()
    )
    return {word for kind in fits for word in kind.gives}


def _giving(word: str) -> tuple[str, ...]:
    """Kinds of the features that give a word at their usual amounts."""
    return tuple(kind for kind, f in KINDS.items() if word in f.gives)


_EVERY_ORDER = {
    "block": 'a block is missing; add a feature kind = "bodice block", a skirt such as '
    'a "straight skirt", or "trousers"',
}
"""What every order needs before it can be drafted, and the sentence when it lacks it.
"""

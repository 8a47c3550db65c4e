"""What a name that is not known may have meant.

A name is near another when it is called so elsewhere (`also`), when it is spelled much
like it, or when one of its words is.
"""

import difflib
import re
from collections.abc import Iterable, Mapping, Sequence

ALIKE = 0.75
"""Share of equal letters from which two words are near: two letters changed places in
a word of six, or one of four left out."""

MOST = 6
"""Names that one sentence may offer."""


def nearest(
    said: str, known: Iterable[str], also: Mapping[str, Sequence[str]] | None = None
) -> tuple[str, ...]:
    """The known names that `said` is near to, the nearest first."""
    names = list(known)
    words = _words(said)
    others = {" ".join(_words(k)): v for k, v in (also or {}).items()}
    called = [n for n in others.get(" ".join(words), ()) if n in names]
    if called:
        return tuple(called)
    spelled = max(names, key=lambda n: _alike(words, _words(n)), default="")
    if spelled and _alike(words, _words(spelled)) >= ALIKE:
        return (spelled,)
    shared = [n for n in names if any(_near(w, _words(n)[-1]) for w in words)]
    shared = shared or [n for n in names if set(_words(n)) & set(words)]
    called = [n for w in words for n in others.get(w, ()) if n in names]
    return tuple(dict.fromkeys(called + shared))[:MOST]


def did_you_mean(
    said: str,
    known: Iterable[str],
    also: Mapping[str, Sequence[str]] | None = None,
    *,
    quoted: bool = False,
) -> str:
    """ "did you mean loop, bone or reel?", or nothing when no name is near."""
    near = [f'"{n}"' if quoted else n for n in nearest(said, known, also)]
    if not near:
        return ""
    *most, last = near
    return f"did you mean {', '.join(most)}{' or ' if most else ''}{last}?"


def _alike(said: list[str], name: list[str]) -> float:
    """How much alike two names are spelled, 0 to 1: as much as their least alike words,
    or as they are without spaces."""
    if len(said) != len(name):
        return _ratio("".join(said), "".join(name))
    return min(_ratio(a, b) for a, b in zip(said, name, strict=True))


def _ratio(a: str, b: str) -> float:
    return difflib.SequenceMatcher(None, a, b).ratio()


def _near(a: str, b: str) -> bool:
    return a == b or (len(a) > 3 and _ratio(a, b) >= ALIKE)


def _words(name: str) -> list[str]:
    """Its words, each of them in the singular."""
    parts = re.split(r"[\s_-]+", name.lower().strip())
    return [w.removesuffix("s") if len(w) > 3 else w for w in parts if w] or [""]

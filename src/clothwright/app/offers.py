"""What could be written on a slip besides what stands there: each feature with what it
would ask for, or does not go with.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from pydantic import ValidationError

from clothwright.app.sentence import plain_why
from clothwright.features import KINDS, Feature
from clothwright.features.parts import by_part
from clothwright.order.together import Disagreement, disagreements


@dataclass(frozen=True)
class Offer:
    """A feature that could be added."""

    kind: str
    against: str = ""
    """Why it does not go with what stands on the slip; blank when it does."""

    asks: str = ""
    """What it asks for that is not on the slip; blank when there is nothing such."""

    given: Mapping[str, Any] = field(default_factory=dict)
    """Its settings that were written."""

    @property
    def fits(self) -> bool:
        """It can stand there as it is."""
        return not self.against and not self.asks

    def plain(self) -> dict[str, Any]:
        """As sent to the page."""
        told = {"against": self.against, "asks": self.asks}
        return {
            "kind": self.kind,
            "say": self.kind,
            "help": KINDS[self.kind].title,
            "with": dict(self.given),
            **{k: v for k, v in told.items() if v},
        }


def offer(
    features: Sequence[Feature], kind: str, given: Mapping[str, Any] | None = None
) -> Offer:
    """A feature as it would stand beside these. Settings that cannot be read count as
    left out."""
    made = Offer(kind, given=given or {})
    try:
        new = KINDS[kind].model_validate({"kind": kind, **made.given})
    except ValidationError:
        new = _usual(kind)
    fresh = _fresh(features, (new,))
    clash = _clash(fresh)
    if clash is not None:
        return replace(made, against=_against(clash, kind))
    for d in (d for d in fresh if d.add):
        more = (_usual(k) for k in d.add)
        if all(_clash(_fresh(features, (new, other))) for other in more):
            told = f"{_asks(d)}, which does not go with the rest."
            return replace(made, against=told)
    for d in fresh:
        return replace(made, asks=f"{_asks(d)}." if d.add else plain_why(d.why))
    return made


def offers(
    features: Sequence[Feature],
    kinds: Iterable[str],
    given: Mapping[str, Mapping[str, Any]] | None = None,
) -> list[dict[str, Any]]:
    """Those of these kinds that are not there yet, first those that go with the rest
    as it is, last those that do not; `given` are settings of some of them."""
    have = {f.kind for f in features}
    of = given or {}
    found = [offer(features, k, of.get(k)) for k in kinds if k not in have]
    return [
        o.plain() for o in sorted(found, key=lambda o: (bool(o.against), bool(o.asks)))
    ]


def shelf(features: Sequence[Feature]) -> dict[str, list[dict[str, Any]]]:
    """All that could be added, under the parts of a garment."""
    told = {part: offers(features, kinds) for part, kinds in by_part().items()}
    return {part: found for part, found in told.items() if found}


@cache
def _usual(kind: str) -> Feature:
    """A feature at its usual amounts."""
    return KINDS[kind].model_validate({"kind": kind})


def _fresh(
    features: Sequence[Feature], more: tuple[Feature, ...]
) -> list[Disagreement]:
    """What disagrees only with these added."""
    before = set(disagreements(features))
    return [d for d in disagreements((*features, *more)) if d not in before]


def _clash(found: Iterable[Disagreement]) -> Disagreement | None:
    """What others say against it; None when it only asks for something itself."""
    return next((d for d in found if not d.add and d.leave != (d.kind,)), None)


def _against(d: Disagreement, kind: str) -> str:
    others = " and the ".join(k for k in d.leave if k != kind)
    return f"Not with the {others}: {plain_why(d.why)}" if others else plain_why(d.why)


def _asks(d: Disagreement) -> str:
    return f"Asks for {' or '.join(d.add[:3])}{' …' if len(d.add) > 3 else ''}"

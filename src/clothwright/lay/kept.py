"""A lay as a text (TOML), to be kept with an order: where each piece lies, and how the
cloth is folded. It says nothing of the pieces; the checker looks at them anew."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from clothwright.lay.byhand import Places
from clothwright.lay.pieces import Placed
from clothwright.lay.plan import Lay
from clothwright.lay.spread import LayError
from clothwright.order import Fold


@dataclass(frozen=True)
class KeptLay:
    """A lay without its pieces."""

    fold: Fold
    gap: float
    placed: Places
    saving: str = ""
    """What opening pieces on the fold would save, as a sentence."""

    before: "tuple[KeptLay, ...]" = ()
    """As it lay before the last moves of a hand, the oldest first."""


def kept_of(lay: Lay) -> KeptLay:
    """What of a lay is kept."""
    return KeptLay(lay.spread.fold, lay.gap, lay.placed, lay.saving)


def write_kept(lay: Lay, before: Sequence[KeptLay] = ()) -> str:
    """A lay as text, and as it lay `before`."""
    import tomli_w

    table = {
        "cloth": lay.of,
        "length": round(lay.length, 4),
        **_table(kept_of(lay)),
    }
    if before:
        table["before"] = [_table(was) for was in before]
    return tomli_w.dumps(table)


def read_kept(text: str) -> KeptLay:
    """A lay from text. Raises LayError."""
    try:
        return _kept(tomllib.loads(text))
    except (tomllib.TOMLDecodeError, KeyError, TypeError, ValueError) as e:
        raise LayError("the kept lay cannot be read; lay the pieces anew") from e


def _table(lay: KeptLay) -> dict[str, Any]:
    return {
        "fold": lay.fold.value,
        "gap": lay.gap,
        "saving": lay.saving,
        "piece": [
            {
                "code": p.code,
                "mirrored": p.mirrored,
                "turn": p.turn,
                "x": round(p.x, 6),
                "y": round(p.y, 6),
            }
            for p in lay.placed
        ],
    }


def _kept(table: Mapping[str, Any]) -> KeptLay:
    return KeptLay(
        Fold(table["fold"]),
        float(table["gap"]),
        tuple(
            Placed(
                str(p["code"]),
                bool(p["mirrored"]),
                float(p["turn"]),
                float(p["x"]),
                float(p["y"]),
            )
            for p in table["piece"]
        ),
        str(table.get("saving", "")),
        tuple(_kept(was) for was in table.get("before", ())),
    )

"""A lay as a text (TOML), to be kept with an order: where each piece lies, and how the
cloth is folded. It says nothing of the pieces; the checker looks at them anew."""

import tomllib
from dataclasses import dataclass

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


def write_kept(lay: Lay) -> str:
    """A lay as text."""
    import tomli_w

    return tomli_w.dumps(
        {
            "cloth": lay.of,
            "fold": lay.spread.fold.value,
            "gap": lay.gap,
            "length": round(lay.length, 4),
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
    )


def read_kept(text: str) -> KeptLay:
    """A lay from text. Raises LayError."""
    try:
        table = tomllib.loads(text)
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
        )
    except (tomllib.TOMLDecodeError, KeyError, TypeError, ValueError) as e:
        raise LayError("the kept lay cannot be read; lay the pieces anew") from e

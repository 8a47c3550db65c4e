"""The draft step by step: each hand instruction with its figure."""

from typing import Any

from clothwright.app.words import Reading
from clothwright.order import OrderError
from clothwright.sheets.drawing import figure
from clothwright.sheets.telling import tell


def steps_of_draft(r: Reading) -> list[dict[str, Any]]:
    """Every step in words and with its figure (an SVG of our own making).

    Raises OrderError when the order cannot be drawn.
    """
    if r.draft is None:
        raise OrderError("the order cannot be drawn, so there are no steps to follow")
    numbers, sheet = r.draft.numbers, r.draft.sheet
    return [
        {
            "part": s.part or "draft",
            "verb": s.verb.value,
            "makes": s.makes,
            "say": tell(s, r.unit, numbers, sheet),
            "svg": figure(r.draft.steps, i),
        }
        for i, s in enumerate(r.draft.steps)
    ]

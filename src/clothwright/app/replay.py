"""The draft step by step: each hand instruction with what is seen on the paper."""

from typing import Any

from clothwright.app.words import Reading
from clothwright.order import OrderError
from clothwright.sheets.drawing import scene
from clothwright.sheets.svg import MM, path_data
from clothwright.sheets.telling import mark_name, tell


def steps_of_draft(r: Reading) -> list[dict[str, Any]]:
    """Every step in words and with its scene, mm of paper.

    Raises OrderError when the order cannot be drawn.
    """
    if r.draft is None:
        raise OrderError("the order cannot be drawn, so there are no steps to follow")
    numbers, sheet = r.draft.numbers, r.draft.sheet
    said, out = r.draft.order.said, []
    for i, s in enumerate(r.draft.steps):
        seen = scene(r.draft.steps, i, said)
        out.append(
            {
                "part": s.part or "draft",
                "verb": s.verb.value,
                "makes": mark_name(s.makes),
                "say": tell(s, r.unit, numbers, sheet),
                "drawn": [[hand.name.lower(), path_data(p)] for hand, p in seen.drawn],
                "rulers": [
                    [_mm(p.start.x), _mm(p.start.y), _mm(p.end.x), _mm(p.end.y)]
                    for p in seen.rulers
                ],
                "marks": [
                    [mark_name(n), _mm(p.x), _mm(p.y), n in seen.named]
                    for n, p in seen.marks
                ],
                "new": [[mark_name(n), _mm(p.x), _mm(p.y)] for n, p in seen.new],
            }
        )
    return out


def _mm(cm: float) -> float:
    return round(cm * MM, 2)

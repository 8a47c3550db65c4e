"""The making order and the cutting sheet as plain data, for other programs.

Lengths are cm, thread is m. Names may be added to the layout, none is renamed.
"""

from collections.abc import Mapping
from typing import Any

from clothwright.features.operations import Task
from clothwright.making.cutting import CuttingSheet, bought
from clothwright.making.order import MakingOrder
from clothwright.making.telling import seam_line
from clothwright.making.thread import REEL, reels
from clothwright.order.cautions import at_work
from clothwright.units import cm_to_ligne


def making_figures(
    making: MakingOrder, minutes: Mapping[Task, float]
) -> dict[str, Any]:
    """Every operation, numbered, with its seams, stitches and minutes."""
    draft = making.draft
    operations = []
    for number, op in enumerate(making.operations, 1):
        lines = [(s, seam_line(making, s)) for s in making.seams(op)]
        operations.append(
            {
                "number": number,
                "work": op.work.words,
                "title": op.title,
                "says": list(op.says),
                "seams": [
                    {
                        "code": line.code,
                        "name": line.name,
                        "pieces": line.pieces,
                        "from_to": line.ends,
                        "length": draft.sheet.chain_length(seam.left),
                        "ease": seam.ease.plan,
                        "notches": [
                            {"at": p.left, "ticks": p.ticks} for p in seam.notches
                        ],
                    }
                    for seam, line in lines
                ],
                "edges": [str(r) for r in op.edges],
                "stitches": {
                    stitch.number: cm for stitch, cm in making.stitched(op).items()
                },
                "seam_type": op.seam_type.number if op.seam_type else None,
                "press": op.press,
                "task": op.task.value if op.task else None,
                "minutes": op.count * minutes[op.task] if op.task else 0.0,
                "cautions": list(at_work(op.hazards, draft.order)),
            }
        )
    return {"garment": draft.order.garment, "operations": operations}


def cutting_figures(sheet: CuttingSheet, reel: float = REEL) -> dict[str, Any]:
    """Pieces by cloth, strips, notions with sizes, thread."""
    return {
        "garment": sheet.making.draft.order.garment,
        "cloths": {
            cloth: [
                {"piece": p.code, "name": p.name, "count": p.count, "how": p.how}
                for p in pieces
            ]
            for cloth, pieces in sheet.cloths.items()
        },
        "strips": [
            {
                "what": one.article.value,
                "count": one.count,
                "length": one.length,
                "width": one.size,
                "in_all": one.total,
                "where": one.where,
            }
            for one in sheet.strips
        ],
        "notions": [
            {
                "what": one.article.value,
                "count": one.count,
                "spare": one.spare,
                "length": one.length,
                "size": one.size,
                "lignes": cm_to_ligne(one.size) if one.size is not None else None,
                "where": one.where,
            }
            for one in sheet.notions
        ],
        "bought": {
            one.article.value: one.total if one.total is not None else one.count
            for one in bought(sheet, reel)
        },
        "thread": {
            "stitches": {
                line.stitch.number: {"seam": line.seam, "thread": line.thread}
                for line in sheet.thread
            },
            "metres": sheet.metres,
            "reels": reels(sheet.metres, reel),
        },
    }

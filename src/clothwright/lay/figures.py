"""Every figure of a lay, for other programs: plain numbers and words, cm."""

from clothwright.lay.pieces import laid_outline
from clothwright.lay.plan import Lay


def figures(lay: Lay) -> dict[str, object]:
    """A lay as plain data; `docs/lay.md` tells the names."""
    spread, solved, buy = lay.spread, lay.solved, lay.buy
    pieces = [
        {
            "code": copy.shape.code,
            "name": copy.shape.label,
            "hand": copy.hand,
            "on_fold": copy.shape.on_fold,
            "mirrored": p.mirrored,
            "turn": p.turn,
            "at": [round(p.x, 4), round(p.y, 4)],
            "outline": [
                [round(x, 3), round(y, 3)] for x, y in laid_outline(copy.shape, p)
            ],
        }
        for copy, p in zip(solved.copies, lay.placed, strict=True)
    ]
    return {
        "format": 1,
        "cloth": lay.of,
        "name": lay.name,
        "fold": spread.fold.value,
        "width": spread.width,
        "bands": [list(b) for b in spread.bands],
        "length": lay.length,
        "efficiency": lay.efficiency,
        "area_bound": solved.area_bound,
        "row_bound": solved.row_bound,
        "at_bound": solved.at_bound,
        "layouts": solved.tried,
        "stopped": solved.stopped,
        "saving": lay.saving,
        "loose": lay.loose_told,
        "others": {f.value: length for f, length in lay.others},
        "spare": list(lay.spare),
        "pieces": pieces,
        "buy": {
            "cm": buy.cm,
            "told": buy.told,
            "price": None if buy.price is None else str(buy.price),
            "parts": [[a.reason, a.cm] for a in buy.parts],
        },
    }

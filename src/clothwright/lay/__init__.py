"""The lay: every piece of a finished pattern on the cloth it is cut from.

Terminology
    lay       the pieces as they lie on the spread cloth, and its length.
    spread    the cloth on the table: layers, folds, selvedges, nap, stripes, flaws.
    shape     a piece with its grain along the cloth, and how often it is cut.
    variant   one way in which a shape may lie: turned end for end, mirrored.
    bound     a length that no lay of these pieces can go below.

Polygon work needs a library that takes a moment to load; nothing below imports this
package, and faces import it only when a lay is asked for.
"""

from clothwright.lay.buy import Amount, ToBuy, to_buy
from clothwright.lay.check import check_lay
from clothwright.lay.patterns import cloths_of
from clothwright.lay.pieces import Placed, Shape, laid_outline, roomiest
from clothwright.lay.plan import Lay, lay
from clothwright.lay.solve import Budget, Progress, Solved, solve
from clothwright.lay.spread import Box, LayError, Spread, spread
from clothwright.lay.spread import told as told_fold

__all__ = [
    "Amount",
    "Box",
    "Budget",
    "Lay",
    "LayError",
    "Placed",
    "Progress",
    "Shape",
    "Solved",
    "Spread",
    "ToBuy",
    "check_lay",
    "cloths_of",
    "laid_outline",
    "lay",
    "roomiest",
    "solve",
    "spread",
    "told_fold",
    "to_buy",
]

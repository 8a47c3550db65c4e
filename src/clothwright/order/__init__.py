"""An order: who, which features, on whose measures; and the pattern it comes to.

Terminology
    cloth     what it is cut from: width, selvedges, shrinkage, nap, price.
    order     a file (TOML) that names a client's measures and the style's features.
    draft     the order drafted: numbers, table, record and what the checks found.
    pattern   the finished pieces, ready for any output.
"""

from clothwright.order.cloths import Cloth, Flaw, Fold, SoldBy
from clothwright.order.draft import Draft, Workroom, draft
from clothwright.order.file import Order, OrderError, read_order
from clothwright.order.pattern import Pattern, pattern

__all__ = [
    "Cloth",
    "Draft",
    "Flaw",
    "Fold",
    "Order",
    "OrderError",
    "Pattern",
    "SoldBy",
    "Workroom",
    "draft",
    "pattern",
    "read_order",
]

"""For Python users: an order file in, a proven pattern and its sheets out.

Lengths are centimetres. See the README for ten lines that run.
"""

from clothwright.order import (
    Draft,
    Order,
    OrderError,
    Pattern,
    Workroom,
    draft,
    pattern,
    read_order,
)
from clothwright.order.figures import figures
from clothwright.sheets import PageFormat, Scale, SheetError, write_pdf, write_svg

__all__ = [
    "Draft",
    "Order",
    "OrderError",
    "PageFormat",
    "Pattern",
    "Scale",
    "SheetError",
    "Workroom",
    "draft",
    "figures",
    "pattern",
    "read_order",
    "write_pdf",
    "write_svg",
]

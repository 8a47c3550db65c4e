"""For Python users: an order file in, a proven pattern and its sheets out.

Lengths are centimetres. See the README for ten lines that run.
"""

from clothwright.cost import ClothBought, CostError, cost_sheet, quote, read_rates
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
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
    "ClothBought",
    "CostError",
    "Draft",
    "Order",
    "OrderError",
    "PageFormat",
    "Pattern",
    "Scale",
    "SheetError",
    "Workroom",
    "cost_sheet",
    "cutting_sheet",
    "draft",
    "figures",
    "making_order",
    "pattern",
    "quote",
    "read_order",
    "read_rates",
    "write_pdf",
    "write_svg",
]

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
from clothwright.order.sizes import MadeSize
from clothwright.sheets import PageFormat, Scale, SheetError, write_pdf, write_svg
from clothwright.sheets.nest import Nest, NestAt, nest
from clothwright.sheets.nest_pdf import write_nest_pdf
from clothwright.size_run import make_sizes as sizes

__all__ = [
    "ClothBought",
    "CostError",
    "Draft",
    "MadeSize",
    "Nest",
    "NestAt",
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
    "nest",
    "pattern",
    "quote",
    "read_order",
    "read_rates",
    "sizes",
    "write_nest_pdf",
    "write_pdf",
    "write_svg",
]

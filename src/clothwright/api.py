"""For Python users: an order file in, a proven pattern and its sheets out.

Lengths are centimetres. See the README for ten lines that run.
"""

from typing import TYPE_CHECKING

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

if TYPE_CHECKING:
    from clothwright.lay import Budget, Lay, LayError, lay

__all__ = [
    "Budget",
    "ClothBought",
    "CostError",
    "Draft",
    "Lay",
    "LayError",
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
    "lay",
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


def __getattr__(name: str) -> object:
    """The lay, whose polygons take a moment to load, only when it is asked for."""
    if name in ("Budget", "Lay", "LayError", "lay"):
        from clothwright import lay as package

        found: object = getattr(package, name)
        return found
    raise AttributeError(f"clothwright.api has no {name}")

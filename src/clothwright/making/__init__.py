"""Making: in which order the garment is sewn, and what it takes.

Terminology
    making order  every operation from cutting out to the last press, in an order in
                  which nothing is done before what it needs.
    needs         kinds of work that must be done before another.
    cutting sheet pieces, cloths, interlining, notions and thread of one order.
"""

from clothwright.making.order import MakingOrder, making_order

__all__ = ["MakingOrder", "making_order"]

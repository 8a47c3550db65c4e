"""Corners of a top edge that flow when the seams of a strapless bodice are sewn
(first garment 22; transformations 1.8)."""

from collections.abc import Collection, Iterator

from clothwright.features.chains import TOP, on_table
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.paper import Sheet
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import PANEL


def top_joints(sheet: Sheet, words: Collection[str]) -> Iterator[Joint]:
    """The top edge of a strapless bodice runs on over its seams, square to both
    centres but where it comes to a point."""
    start, end = End.START, End.END
    f = "F" if on_table(sheet, "F", TOP) else "FS"
    b = "B" if on_table(sheet, "B", TOP) else "BS"
    for name, one, other in (
        ("the side", (f, start), (b, end)),
        ("the front panel", ("FC", start), ("FS", end)),
        ("the back panel", ("BC", end), ("BS", start)),
    ):
        if on_table(sheet, one[0], TOP) and on_table(sheet, other[0], TOP):
            corners = Corner(one[0], TOP, one[1]), Corner(other[0], TOP, other[1])
            yield Joint(f"top edge over {name}", corners, 180.0, PANEL)
    front, back = ("F" if f == "F" else "FC"), ("B" if b == "B" else "BC")
    if on_table(sheet, front, TOP, "cf") and V_FRONT not in words:
        yield Joint.fold("top edge at the centre front", Corner(front, TOP, end))
    if on_table(sheet, back, TOP, "cb"):
        yield Joint.fold("top edge at the centre back", Corner(back, TOP, start))

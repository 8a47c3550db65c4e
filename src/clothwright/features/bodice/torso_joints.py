"""Corners of a torso's hem (blocks C, K6)."""

from collections.abc import Iterator

from clothwright.features.chains import on_table
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.paper import Sheet
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import SIDE_HEM


def torso_joints(sheet: Sheet) -> Iterator[Joint]:
    """The hem runs on over side and panels, square to fold and centre back."""
    start, end = End.START, End.END
    f = "F" if on_table(sheet, "F", "hem") else "FS"
    b = "B" if on_table(sheet, "B", "hem") else "BS"
    for name, over, under in (
        ("side", f, b),
        ("front panel", "FC", "FS"),
        ("back panel", "BS", "BC"),
    ):
        if name == "side" and on_table(sheet, over, SLIT):
            continue
        if on_table(sheet, over, "hem") and on_table(sheet, under, "hem"):
            corners = (Corner(over, "hem", end), Corner(under, "hem", start))
            yield Joint(f"hem over the {name}", corners, 180.0, SIDE_HEM)
    front, back = ("F" if f == "F" else "FC"), ("B" if b == "B" else "BC")
    if on_table(sheet, front, "hem", "cf"):
        yield Joint.fold("hem at the centre front", Corner(front, "hem", start))
    if on_table(sheet, back, "hem", "cb") and not on_table(sheet, back, "vent"):
        yield Joint.fold("hem at the centre back", Corner(back, "hem", end))

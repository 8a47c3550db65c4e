"""What is said of facings and their seams."""

from clothwright.features.about import About, Place

FACINGS = tuple(
    About(code, Place.FACING, ("facing",), cloths=("shell", "interlining"))
    for code in ("FF", "BF")
)
"""Facing of the front and of the back."""

FACED = {
    "S8": "front neck and its facing; a lining to the edge has LE1 in its place",
    "S9": "back neck (and slanted edge) and its facing; a lining to the edge has LE2",
    "S10": "front armhole and its facing; a lining to the edge has LE3 in its place",
    "S11": "back armhole and its facing; a lining to the edge has LE4 in its place",
    "S12": "shoulder of the facings",
    "S13": "side of the all-in-one facings",
    "S18": "foot of the back facing, caught in the waist seam beside an open back",
}

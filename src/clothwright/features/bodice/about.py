"""What is said of the pieces and the seams that every bodice has."""

from clothwright.features.about import About, Place

_FRONTS = ("FC", "FS", "F", "FY", "FYS", "FM", "FMS")
_BACKS = ("BC", "BS", "B", "BY", "BYS", "BM", "BMS")

SHELL = (*_FRONTS, *_BACKS)
"""The codes of all that a bodice may be cut in."""

PIECES = (
    *(About(c, Place.FRONT, ("front",)) for c in _FRONTS),
    *(About(c, Place.BACK, ("back",)) for c in _BACKS),
    About("B high", shown=("back",)),
)
"""Front and back whole (F, B), in panels (centre FC, BC; side FS, BS), their yokes, in
one or with a panel seam (FY, FYS, BY, BYS), and what lies below an empire seam (FM,
FMS, BM, BMS); B high is the upper part of a back whose dart is moved."""

SEAMS = {
    "S1": "front panel seam, of a front with a princess line",
    "S2": "back panel seam, of a back with a princess line",
    "S3": "shoulder seam",
    "S3a": "shoulder seam towards the tip, of a shoulder princess",
    "S4": "side seam of a bodice",
    "S21": "centre back seam",
}

"""What is said of the pieces and the seams that several sleeves have."""

from clothwright.features.about import About, Place
from clothwright.features.roles import sleeve_hem

SLEEVE_HEM = {"hem": sleeve_hem, "hem back": sleeve_hem}
"""Both halves of a hem, where a slit parts them."""

SLEEVE_PIECE = About("SL", Place.SLEEVE, ("sleeve",), SLEEVE_HEM)

SLEEVE_SEAMS = {
    "S23": "sleeve to the front armhole",
    "S24": "sleeve to the back armhole",
    "S25": "seam under the arm, of a sleeve",
}

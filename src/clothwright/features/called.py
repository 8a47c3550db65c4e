"""What dressmakers call a feature besides its kind: it leads an order to the kind."""

from clothwright.features import KINDS
from clothwright.units import did_you_mean

_ZIPS = ("concealed zip", "underarm zip", "open zip", "skirt zip", "side zip", "fly")
_ARMHOLES = ("sleeveless armhole", "sleeved armhole")
_BUTTONED = ("button stand", "neck placket", "loops")
_PANELS = ("front armhole princess", "back armhole princess", "shoulder princess")

_SET_POCKETS = (
    "set pocket",
    "front pocket",
    "back pocket",
    "tier pocket",
    "knit pocket",
    "top pocket",
    "breast pocket",
)
_SIDE_POCKETS = ("trouser pockets", "skirt pockets", "knit side pockets")
_POCKETS = (*_SIDE_POCKETS, *_SET_POCKETS)

CALLED: dict[str, tuple[str, ...]] = {
    "bodice": ("bodice block", "knit bodice"),
    "dress": ("dress skirt", "straight dress skirt", "torso"),
    "sheath": ("torso", "straight dress skirt"),
    "sheath dress": ("torso", "straight dress skirt"),
    "shift": ("torso", "tent"),
    "zip": _ZIPS,
    "zipper": _ZIPS,
    "separating zip": ("open zip",),
    "fastener": ("fasteners", *_ZIPS),
    "snap": ("fasteners",),
    "press stud": ("fasteners",),
    "hook": ("fasteners",),
    "hook and eye": ("fasteners",),
    "corset": ("lacing", "strapless"),
    "lace-up": ("lacing",),
    "opening": (*_ZIPS, "button stand"),
    "fly zip": ("fly",),
    "fly front": ("fly",),
    "button": _BUTTONED,
    "button placket": _BUTTONED,
    "buttonhole": _BUTTONED,
    "armhole": _ARMHOLES,
    "armscye": _ARMHOLES,
    "sleeveless": ("sleeveless armhole",),
    "neck": ("neckline", "back neckline"),
    "princess": _PANELS,
    "princess line": _PANELS,
    "princess seam": _PANELS,
    "dart": ("side dart", "bust dart", "back waist dart"),
    "french dart": ("side dart",),
    "sleeve": ("set-in sleeve", "kimono sleeve", "cap sleeve", "flutter sleeve"),
    "long sleeve": ("set-in sleeve",),
    "bishop sleeve": ("gathered hem",),
    "puff sleeve": ("puffed cap",),
    "puffed sleeve": ("puffed cap",),
    "dolman sleeve": ("kimono sleeve",),
    "batwing sleeve": ("kimono sleeve",),
    "cuffs": ("cuff", "turn-ups"),
    "peter pan collar": ("flat collar",),
    "eton collar": ("flat collar",),
    "mandarin collar": ("stand collar",),
    "band collar": ("stand collar",),
    "bow collar": ("tie collar",),
    "pussy bow": ("tie collar",),
    "lapel": ("notched collar", "shawl collar"),
    "revers": ("notched collar", "shawl collar"),
    "ruffle": ("flounce", "neck frill"),
    "frill": ("neck frill", "flounce"),
    "skirt": (
        "straight skirt",
        "circle skirt",
        "gored skirt",
        "gathered skirt",
        "pleated skirt",
        "wrap skirt",
    ),
    "pencil skirt": ("straight skirt",),
    "flared skirt": ("circle skirt", "gored skirt", "dress skirt"),
    "tiered skirt": ("gathered skirt",),
    "full circle skirt": ("circle skirt",),
    "full skirt": ("circle skirt", "gathered skirt", "dress skirt"),
    "pleat": ("centre pleat", "pleated skirt", "front pleats"),
    "kick pleat": ("vent", "centre pleat"),
    "inverted pleat": ("centre pleat",),
    "slit": ("side slit", "vent"),
    "side vent": ("side slit",),
    "walking slit": ("side slit",),
    "band": ("waistband", "sleeve band", "neck band", "armhole band", "hem band"),
    "elastic": ("elastic waist", "trouser elastic"),
    "elastic waistband": ("elastic waist", "trouser elastic"),
    "pants": ("trousers",),
    "slacks": ("trousers",),
    "trouser": ("trousers",),
    "pocket": _POCKETS,
    "patch pocket": _SET_POCKETS,
    "welt pocket": _SET_POCKETS,
    "jetted pocket": _SET_POCKETS,
    "chest pocket": ("breast pocket",),
    "hip pocket": ("back pocket", "top pocket"),
    "side pockets": _SIDE_POCKETS,
    "hem": ("gathered hem", "hem band", "turn-ups"),
    "yoke": ("front yoke", "back yoke", "hip yoke"),
    "mounting": ("underlining",),
    "binding": ("neck binding", "armhole binding"),
    "bias binding": ("neck binding", "armhole binding"),
    "cape": ("capelet",),
    "a-line skirt": ("a-line", "straight skirt", "gored skirt"),
    "flared": ("a-line", "circle skirt", "gored skirt"),
}
"""Kinds by what a feature is called elsewhere, in small letters, in the singular or the
plural (common practice, no source)."""


def which_feature(said: str) -> str:
    """Which kinds may be meant by one that there is not, and where all are listed."""
    near = did_you_mean(said, KINDS, CALLED, quoted=True)
    return f"{near}{' ' if near else ''}`clothwright features` lists them all"

"""Parts of a garment, under which features are listed: the folders of their files."""

from collections.abc import Mapping

from clothwright.features import KINDS

PARTS: Mapping[str, str] = {
    "": "The block, the fitting",
    "bodice": "Bodice, darts and panels",
    "necks": "Necks and straps",
    "openings": "Open backs and closings",
    "sleeves": "Sleeves",
    "skirts": "Skirts and peplums",
    "linings": "Facings, bindings and linings",
    "collars": "Collars and frills",
    "pockets": "Pockets",
    "trousers": "Trousers and shorts",
    "knits": "Knits",
    "hand": "By hand",
}
"""What each folder holds, in the order in which they are told."""


def part_of(kind: str) -> str:
    """The heading under which a feature is listed. Raises KeyError for a kind that
    there is not."""
    inside = KINDS[kind].__module__.split(".")[2:-1]
    return PARTS[inside[0] if inside else ""]


def by_part() -> Mapping[str, list[str]]:
    """All kinds under their headings."""
    out: dict[str, list[str]] = {heading: [] for heading in PARTS.values()}
    for kind in KINDS:
        out[part_of(kind)].append(kind)
    return out

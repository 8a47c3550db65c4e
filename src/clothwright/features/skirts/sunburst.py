"""Sunburst pleats: a segment of a circle of which a pleater presses fine pleats, all
to its centre (transformations §10; blocks G1, G2).

As the pleats lie the skirt is a segment with the waist as its arc, its share of a
circle f; in the cloth the radius is the same, the angle as many times as large as the
cloth is pleated together.
"""

from collections.abc import Callable, Iterable

from clothwright.features.base import Number
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.paper import Sheet
from clothwright.rules import Kind

SRC = "transformations §10"

FULLNESS = Number(
    "f",
    "f",
    "share of a full circle, as the pleats lie",
    f"{SRC}, blocks G1",
    0.33,
    None,
    0.1,
    1.0,
    (0.2, 0.5),
    Kind.RATIO,
)

RATIO = Number(
    "pr",
    "pr",
    "pleating ratio: cloth to the same pleated",
    SRC,
    3.0,
    None,
    1.5,
    5.0,
    (2.5, 3.5),
    Kind.RATIO,
)


def pleating(what: str) -> Notion:
    """The pleater's work, for the cutting sheet."""
    return Notion(Article.PLEATING, 1, f"at a pleater's: {what}, sewn and hemmed")


def pleater_operations(
    sheet: Sheet,
    begins: tuple[str, ...],
    ratio: float,
    waist: str,
    still_open: str,
    hem: Work,
) -> Iterable[Operation]:
    """The hem, and what is given away: before the waist is sewn. `still_open` names the
    seam that is not closed yet, `waist` how long the pleated waist is to be; the hem is
    `hem` among the kinds of work."""
    yield Operation(
        hem,
        "Hem the skirt before it is pleated",
        (
            f"Narrow, turned twice, from one edge of {still_open} to the other: it is "
            "pressed in with the pleats and cannot be levelled afterwards.",
        ),
        edges=finished_edges(sheet, begins, "hem"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.HEM_TWICE,
        task=Task.CIRCLE_HEM,
    )
    yield Operation(
        Work.READY,
        "Give the skirt to the pleater",
        (
            f"Flat, {still_open} open: sunburst pleats that run to the centre of the "
            f"arcs, {ratio:g} of cloth to 1 pleated, the waist {waist} long.",
            "Have a scrap of this cloth pleated first: wool holds the pleats with "
            "steam, polyester for good, cotton and linen not through a wash.",
            "Back from there, baste the pleats along the waist within the allowance, "
            "and measure the waist.",
        ),
    )


def note(ratio: float, fmt: Callable[[float], str], waist: float, hem: float) -> str:
    """What the pattern's first page says."""
    return (
        f"Sunburst pleats are a pleater's work: {ratio:g} of cloth to 1 pleated. As "
        f"they lie the waist is {fmt(waist)} and the hem {fmt(hem)} round; in the "
        f"cloth {fmt(ratio * waist)} and {fmt(ratio * hem)}."
    )

"""Sunburst pleats: a segment of a circle of which a pleater presses fine pleats, all
to its centre (transformations §10; blocks G1, G2).

As the pleats lie the skirt is a segment with the waist as its arc, its share of a
circle f; in the cloth the radius is the same, the angle as many times as large as the
cloth is pleated together.
"""

from collections.abc import Callable, Iterable

from clothwright.blocks.circle import Sector
from clothwright.features.base import Number
from clothwright.features.grain import grained
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.skirts.hanging_seams import lining_fuller
from clothwright.paper import Drafting, Piece, Sheet, Taped, Verb
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


def plain_lining(d: Drafting) -> None:
    """The lining of a skirt on a bodice, which is not pleated: the segment that the
    skirt is as its pleats lie."""
    n = d.n
    whole, more = n.w_F + n.w_PB, {}
    for code, phi, waist, seam in (
        ("L.PF", n.phi_F, n.w_F, "LS5"),
        ("L.PB", n.phi_B, n.w_PB, "LS6"),
    ):
        if code not in d.sheet.pieces:
            continue
        d.part = "lining"
        old, front = d.sheet.piece(code), code == "L.PF"
        kinds = {e.name: e.kind for e in old.edges}
        right, left = ("cf", "side") if front else ("side", "cb")
        degrees, outer = phi / n.pr, n.r_hem - n.short
        sector = Sector.half(n.r, outer, degrees, at_right=front)
        names = ("waist", right, "hem", left)
        top, second, low, last = ((name, kinds[name]) for name in names)
        edges = sector.edges(top, second, low, last)
        piece = grained(Piece(code, old.name, edges))
        d.lay(
            Verb.REDRAW,
            d.sheet.put(piece),
            code,
            f"{old.name.lower()}, as wide as the pleats lie",
            amounts=(
                ("over an angle of {}", Taped("", degrees, angle=True)),
                ("with a waist arc of radius {}", "r"),
            ),
            detail="it is not pleated: both arcs from Op, joined by lines that run to "
            "it",
            lines=(piece.outline,),
        )
        more[seam] = -(n.pr - 1) * n.w_P / 2 * waist / whole
    d.sheet = lining_fuller(d.sheet, more)


def note(ratio: float, fmt: Callable[[float], str], waist: float, hem: float) -> str:
    """What the pattern's first page says."""
    return (
        f"Sunburst pleats are a pleater's work: {ratio:g} of cloth to 1 pleated. As "
        f"they lie the waist is {fmt(waist)} and the hem {fmt(hem)} round; in the "
        f"cloth {fmt(ratio * waist)} and {fmt(ratio * hem)}."
    )

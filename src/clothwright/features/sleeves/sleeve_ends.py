"""What a band and a cuff have in common: the hem that is sewn to them."""

from collections.abc import Callable, Iterable

from clothwright.curves import Path
from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import Edge, EdgeKind, Run, Sheet, own_piece, redraw
from clothwright.paper.seam import GATHERED
from clothwright.rules import Numbers

BELOW = 12.0
"""A band is drawn so far below the sleeve on the table, cm."""


def both_sides(sheet: Sheet, *codes: str) -> tuple[str, ...]:
    """The codes of these seams, and of the left side's where the two differ."""
    return tuple(s.code for s in sheet.seams if own_piece(s.code) in codes)


def hem_edges(sheet: Sheet) -> tuple[Run, ...]:
    """The hem of the sleeve, in one or in two at a slit, from front to back; of a
    raglan, that of both its pieces."""
    return tuple(
        Run(code, e.name)
        for code in ("SL", "SLF", "SLB")
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.name in ("hem", "hem back")
    )


def hem_length(sheet: Sheet) -> float:
    """Length of the hem of the sleeve, cm."""
    return sheet.chain_length(hem_edges(sheet))


def hem_is_sewn(sheet: Sheet, slit: float = 0.0) -> Sheet:
    """The hem as an edge that is sewn; divided `slit` from its back end for a slit."""
    path = sheet.edge("SL", "hem").path
    parts: tuple[tuple[str, Path], ...] = (("hem", path),)
    if slit > 0:
        front, back = path.split_at_length(path.length - slit)
        parts = (("hem", front), ("hem back", back))
    return redraw(
        sheet, "SL", ["hem"], [Edge(name, p, EdgeKind.SEAM) for name, p in parts]
    )


def gather_hem(sheet: Sheet, fmt: Callable[[float], str]) -> Iterable[Operation]:
    """Draw the hem up to its band."""
    seam = sheet.seam("S26")
    hem, band = sheet.chain_length(seam.right), sheet.chain_length(seam.left)
    if hem - band <= GATHERED:
        return
    yield Operation(
        Work.CUFF,
        "Gather the ends of the sleeves",
        (
            f"{fmt(hem)} into {fmt(band)}: two rows of long stitches, one to each side "
            "of the net line, drawn up evenly between the notches.",
        ),
        stitch=Stitch.LOCK,
        length=4 * hem,
        task=Task.GATHER,
    )


def band_findings(n: Numbers, sheet: Sheet, symbol: str) -> Iterable[Finding]:
    """The hem goes into its band or cuff, of this symbol (transformations 4: 1.3 to 2
    times)."""
    hem = hem_length(sheet)
    if hem < n.band_net - 1e-6:
        yield Finding(
            "SB1",
            Severity.REFUSE,
            f"The hem of the sleeve, {hem:.1f} cm, is shorter than what it is sewn to, "
            f"{n.band_net:.1f} cm.",
            "band",
            f"Taper the sleeve less, add a gathered hem, or make the {symbol} shorter "
            f"({symbol}).",
            {"hem": hem, "band": n.band_net},
        )
    elif hem > 2.6 * n.band_net:
        yield Finding(
            "SB3",
            Severity.WARN,
            f"The hem of {hem:.1f} cm goes into {n.band_net:.1f} cm, more than 2.6 to "
            "1: it lies thick in the seam.",
            "band",
            "Taper the sleeve, or widen the band.",
            {"hem": hem, "band": n.band_net},
        )

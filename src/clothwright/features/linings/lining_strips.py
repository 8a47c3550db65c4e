"""A lining beside the facing or the band of a button stand, and what it has in common
with the lining below other facings (first garment 15, transformations 6)."""

from collections.abc import Iterator

from clothwright.features.openings.stand_band import BAND, BAND_SEAMS, banded
from clothwright.features.openings.stand_pieces import BACK, BANDED, FRONT, STAND
from clothwright.paper import (
    Ease,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    cut,
    spot_on,
)
from clothwright.truing.tolerances import DOUBLED, NOTCH_ROOM

REACH = 1.0
"""A facing's edge is run on by this much to be sure to meet the outline, cm."""

_NEAR, _ASLANT = 0.1, 0.1
"""The lining beside a strip may differ by the first from what it should measure, cm,
and what is cut off at its hem by the second, a share: it lies aslant there."""


def stand_facing(sheet: Sheet, shell: str) -> Piece | None:
    """The facing that a button stand has behind this piece, if there is one."""
    for centre in (FRONT, BACK):
        for codes, facing in (
            (centre.upper, centre.facing),
            (centre.lower, centre.low_facing),
        ):
            if shell in codes and sheet.piece(shell).has(STAND):
                return sheet.pieces.get(facing)
    return None


def beside_strip(piece: Piece, strip: Piece) -> Piece:
    """What a strip behind the centre leaves of a piece to be lined."""
    wide = strip.edge("free").path.run_on(REACH)
    hits = sorted((s, e.name) for e in piece.edges for s, _ in wide.meets(e.path))
    if len(hits) < 2:
        raise PaperError(
            f"{piece.name.lower()}: the facing beside the centre leaves nothing of it "
            "to be lined: make the facing (bf) narrower"
        )
    (s0, e0), (s1, e1) = hits[0], hits[-1]
    parts = cut(
        Sheet().put(piece),
        piece.code,
        wide.between(s0, s1),
        spot_on(piece, e0, wide.at_length(s0)),
        spot_on(piece, e1, wide.at_length(s1)),
        edge="join",
        seam="join",
        seam_name="facing join",
        into=(("one", ""), ("two", "")),
    )
    rest = next(q for q in parts.pieces.values() if not q.has(STAND))
    return rest.with_edges(e.along(e.path.without_crumbs(DOUBLED)) for e in rest.edges)


def strip_seams(sheet: Sheet, short: float) -> Iterator[Seam]:
    """The lining beside the facing of a button stand, below the waist: as much shorter
    at the hem as it hangs shorter."""
    for centre in (FRONT, BACK):
        shell = centre.on(sheet, centre.lower)
        if not shell or centre.low_facing not in sheet.pieces:
            continue
        front = centre is FRONT
        join, free = Run(f"L.{shell}", "join", front), Run(centre.low_facing, "free")
        free = free._replace(backward=front)
        yield Seam(
            f"LS{'F' if front else 'B'}",
            f"lining to {centre.words} facing, below the waist",
            (join,),
            (free,),
            "waist",
            "hem",
            Ease.about(short, _NEAR + _ASLANT * short),
            runs_on=True,
        )


def beside_band(sheet: Sheet, short: float) -> Iterator[Seam]:
    """The lining on the seam of a band, from the end of the facing down: as much
    shorter at the hem as it hangs shorter."""
    centre = banded(sheet)
    if centre is None:
        return
    up = centre is BACK  # whose loop runs the other way
    runs = tuple(
        Run(f"L.{c}", BANDED, up)
        for c in (*centre.upper, *centre.lower)
        if f"L.{c}" in sheet.pieces
    )
    faced = sheet.length(centre.facing, "end")
    yield Seam(
        f"L{BAND_SEAMS[centre][0]}",
        f"lining beside the {centre.words} band",
        runs,
        (Run(BAND, "side", not up),),
        "facing",
        "hem",
        Ease.about(faced + short, _NEAR + _ASLANT * short),
        kind=SeamKind.LAPPED,
    )


def at_joint(
    sheet: Sheet, chains: tuple[tuple[Run, ...], ...], found: tuple[float, float]
) -> bool:
    """True for a notch that comes to lie at the joint of a lining and the facing of a
    button stand, which is seen by itself."""
    facings = {
        c for centre in (FRONT, BACK) for c in (centre.facing, centre.low_facing)
    }
    for chain, at in zip(chains, found, strict=True):
        done = 0.0
        for q in chain:
            begins, done = done, done + sheet.length(q.piece, q.edge)
            if (
                q.piece in facings
                and min(abs(begins - at), abs(done - at)) < NOTCH_ROOM
            ):
                return True
    return False

"""The lining hung from the free edges of the facings (first garment 15 and 21)."""

from collections.abc import Iterator

from clothwright.features.chains import Chains
from clothwright.features.linings.facing_pieces import SHORT_OF_ZIP
from clothwright.features.linings.sewn_halves import (
    OVER,
    SewnHalf,
    sewn_back,
    sewn_front,
)
from clothwright.features.openings.stand_pieces import STAND
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, Sheet
from clothwright.truing.tolerances import NOTCH_ROOM

_NEAR = 0.1
"""A lining's join may differ by this much from what it should measure, cm."""

_Chain = tuple[Run, ...]


def facing_joins(sheet: Sheet, rho: float, hung: float) -> Iterator[Seam]:
    """The lining hung from the facings' free edges; both lie on one line, so that they
    are of one length, or the lining `hung` cm shorter beside a facing that is led down
    to the hem of a torso."""
    for code, facing, half in (
        ("LF", "FF", sewn_front(sheet)),
        ("LB", "BF", sewn_back(sheet)),
    ):
        front = facing == "FF"
        outside = half.flank.code if half.flank else f"SL{half.centre.code}"
        codes = [half.centre.code, outside]  # or the sleeve of a raglan
        join = tuple(
            Run(f"L.{c}", "join", True)
            for c in (codes if front else reversed(codes))
            if f"L.{c}" in sheet.pieces and sheet.piece(f"L.{c}").has("join")
        )
        if not join:
            continue
        outer = "side" if sheet.piece(facing).has("side") else "shoulder"
        start, end = ("centre front", outer) if front else (outer, "centre back")
        if half.centre.has(OVER):
            start = "waist"
        if half.slant is not None:
            end = "panel" if sheet.piece(facing).has("panel") else "waist"
        short = SHORT_OF_ZIP if not front and Chains(sheet).zipped() else 0.0
        centre = sheet.piece(half.centre.code)
        if centre.has(STAND) and centre.has("hem"):
            short = -hung
        ease = Ease.about(-short, _NEAR)
        if outer == "shoulder":  # where the facing is cut back for its roll (14.5)
            ease = Ease(-short - rho / 2, -short - rho - _NEAR, -short + _NEAR)
        yield Seam(
            code,
            f"lining to {sheet.piece(facing).name.lower()}",
            join,
            (Run(facing, "free"),),
            start,
            end,
            ease,
            None,
            _join_notches(sheet, half, join, facing, 1 if front else 2),
            runs_on=short < 0,
        )


def _raglan(sheet: Sheet, half: SewnHalf) -> bool:
    """True for a half whose shoulder lies on the sleeve."""
    return sheet.piece(half.centre.code).has("raglan")


def _join_notches(
    sheet: Sheet, half: SewnHalf, join: _Chain, facing: str, ticks: int
) -> tuple[NotchPair, ...]:
    """A notch on the facing where the lining's panel seam, or a raglan's, ends."""
    seam = half.panel
    if _raglan(sheet, half):
        seam = sheet.edge(half.centre.code, "raglan").path
    if seam is None or len(join) < 2:
        return ()
    free = sheet.edge(facing, "free").path
    joint = sheet.length(join[0].piece, join[0].edge)
    hits = [s for _, s in seam.meets(free)]
    ends = NOTCH_ROOM, free.length - NOTCH_ROOM
    return tuple(
        NotchPair(joint, s, ticks, JOINT) for s in hits[:1] if ends[0] < s < ends[1]
    )

"""Seams of a front that take in its tucks: their ease grows by what was laid in, and
their notches move out with the paper (transformations 1.6, 10)."""

from collections.abc import Collection, Iterable
from dataclasses import replace

from clothwright.features.hand.hand_places import NEAR
from clothwright.features.hand.hand_seams import swapped_note
from clothwright.features.tucked import plumb_at
from clothwright.paper import (
    JOINT,
    Ease,
    NotchPair,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
)

_BESIDE = 0.3
"""A seam is full so far beyond its outermost tucks, cm (our own)."""

_UNLIKE = 2.0
"""A seam whose sides differ by more before it takes tucks in has no like places for
notches, cm (our own)."""


def seams_with_tucks(
    before: Sheet,
    after: Sheet,
    plain: Piece,
    places: list[float],
    gathered: Collection[str],
) -> Sheet:
    """Seams of the front take in its tucks: their plan grows by what they lay in, and
    notches move out with the paper; those that are `gathered` have done so."""
    out = after
    for s in before.seams:
        if s.kind is SeamKind.TWIN or s.code in gathered:
            continue
        if not any(r.piece == plain.code for r in s.runs()):
            continue
        mine = any(r.piece == plain.code for r in s.left)
        chain = s.left if mine else s.right
        grown = after.chain_length(chain) - before.chain_length(chain)
        if grown < NEAR:
            continue
        at = sorted(_along(before, chain, plain, places))
        out = out.sew(_taking_in(before, s, mine, at, grown))
    return out


def _taking_in(
    sheet: Sheet, s: Seam, mine: bool, at: list[float], grown: float
) -> Seam:
    each = grown / len(at)
    chain, other = (s.left, s.right) if mine else (s.right, s.left)
    rest = sheet.chain_length(other)
    low, high = max(0.0, at[0] - _BESIDE), min(rest, at[-1] + _BESIDE)
    plan = s.ease.plan * (-1 if mine else 1) + grown
    notches = []
    unlike = abs(s.ease.plan) > _UNLIKE
    for k in () if unlike else s.notches:
        own, beside = (k.left, k.right) if mine else (k.right, k.left)
        if NEAR < own < rest - NEAR and low < own < high:
            continue
        moved = own + each * sum(a < own for a in at)
        note = swapped_note(k.note) if mine else k.note
        if own >= high and note == JOINT:  # what is eased in besides lies there too
            moved = beside + plan
        elif own >= high:
            beside = moved - plan
        notches.append(NotchPair(beside, moved, k.ticks, note))
    return replace(
        s,
        left=other,
        right=chain,
        ease=Ease.about(plan, 0.1),
        zone=None if unlike else (low, high),
        tucked=True,
        notches=tuple(notches),
    )


def _along(
    sheet: Sheet, chain: tuple[Run, ...], plain: Piece, places: list[float]
) -> Iterable[float]:
    """How far along a chain its tucks lie, before they are opened, cm."""
    done = 0.0
    for run in chain:
        path = sheet.run_path(run)
        if run.piece == plain.code:
            for x in places:
                yield from (done + s for s, _ in path.meets(plumb_at(x)))
        done += path.length

"""What becomes of seams when her own step makes an edge longer."""

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import accumulate

from clothwright.curves import Point
from clothwright.features.hand.hand_places import NEAR
from clothwright.paper import (
    JOINT,
    JOINT_RIGHT,
    Ease,
    NotchPair,
    Run,
    Seam,
    SeamKind,
    Sheet,
)
from clothwright.truing.tolerances import DOUBLED, NOTCH_ROOM, NOTCH_SET

BESIDE = 2.0
"""Gathers are notched so far to both sides of what was opened, cm."""

CLEAR = 1.5
"""Such a notch keeps so far off corners and other notches, cm."""


def taken_in(
    before: Sheet,
    after: Sheet,
    piece: str,
    mouths: Sequence[Point],
    how: str,
    beside: float = BESIDE,
) -> Sheet:
    """Seams of a piece whose edges have grown take in the difference: its plan is what
    they are longer now, and notches `beside` the mouth, cm, bound the gathers; what is
    lapped on (a lining) follows the seam that it lies in, and needs none. Gathers end
    on all seams of an edge where a collar that stops short of the centre lets them."""
    out = after
    ahead, backward = _before_knot(before, after, piece, mouths)
    for s in before.seams:
        if s.kind is SeamKind.TWIN or not any(r.piece == piece for r in s.runs()):
            continue
        new = after.seam(s.code)
        mine = any(r.piece == piece for r in s.left)
        old = s.left if mine else s.right
        chain, other = (new.left, new.right) if mine else (new.right, new.left)
        grown = after.chain_length(chain) - before.chain_length(old)
        if grown < NEAR:
            continue
        at = min(_along(before, old, p) for p in mouths)
        ease, free = Ease.about(s.ease.plan * (-1 if mine else 1) + grown, 0.1), 0.0
        if s.stretched and mine:  # a collar that ends short of the centre
            low, high = grown - s.ease.high, grown - s.ease.low
            ease, free = Ease(ease.plan, low, high), -s.ease.plan
        rest = after.chain_length(other)
        last = at > before.chain_length(old) - NEAR  # it opens at the end of the seam
        notches = _carried(s, mine, at - NEAR if last else at, grown)
        back, on = beside, min(beside, ahead)
        if any(r.piece == piece and r.backward is not backward for r in old):
            back, on = on, back
        low, high = max(at - back, CLEAR), min(at + on, rest - CLEAR)
        low, high = 0.0 if at < NEAR else low, rest if last else high
        zone = (NotchPair(low, low), NotchPair(high, high + ease.plan - free))
        ends = (k for k in notches if not NEAR < k.left < rest - NEAR)
        between = (k for k in notches if NEAR < k.left < rest - NEAR)
        clear = (k for k in between if not low - CLEAR < k.left < high + CLEAR)
        notches = tuple(sorted((*ends, *clear)))
        gathers = how == "gathers"
        bounded = low < high and s.kind is not SeamKind.LAPPED
        if gathers and bounded:
            bounds = (k for k in zone if NEAR < k.left < rest - NEAR)
            notches = tuple(sorted((*notches, *bounds)))
        out = out.sew(
            replace(
                new,
                left=other,
                right=chain,
                ease=ease,
                free=free,
                zone=(zone[0].left, zone[1].left) if bounded or not gathers else None,
                drawn_up=new.drawn_up or (gathers and bounded),
                notches=notches,
            )
        )
    return out


def _before_knot(
    before: Sheet, after: Sheet, piece: str, mouths: Sequence[Point]
) -> tuple[float, bool]:
    """How far beyond a mouth gathers may go towards the end of a collar that stops
    short of the centre, cm, and whether its seam runs against the piece's edge."""
    for s in before.seams:
        mine = [r for r in s.left if r.piece == piece]
        if s.stretched and mine and s.kind is not SeamKind.TWIN:
            at = min(_along(before, s.left, p) for p in mouths)
            room = after.chain_length(after.seam(s.code).right) - CLEAR - at
            return max(0.0, room), mine[0].backward
    return math.inf, False


def _along(sheet: Sheet, chain: tuple[Run, ...], p: Point) -> float:
    """How far along a chain the place nearest to `p` is, cm."""
    best, at, done = 1e9, 0.0, 0.0
    for run in chain:
        path = sheet.run_path(run)
        place, gap = path.nearest(p)
        if gap < best - NEAR:
            best, at = gap, done + path.length_to(place)
        done += path.length
    return at


def _carried(s: Seam, mine: bool, at: float, grown: float) -> tuple[NotchPair, ...]:
    """A seam's notches with the side that has grown put second."""
    out = []
    for n in s.notches:
        own, other = (n.left, n.right) if mine else (n.right, n.left)
        shifted = own + grown if own > at else own
        note = swapped_note(n.note) if mine else n.note
        out.append(n._replace(left=other, right=shifted, note=note))
    return tuple(out)


def swapped_note(note: str) -> str:
    """A notch's note when the two sides of its seam change places."""
    return {JOINT: JOINT_RIGHT, JOINT_RIGHT: JOINT}.get(note, note)


def off_corners(sheet: Sheet, piece: str) -> Sheet:
    """The sheet with notches of a piece's seams moved off corners that a new cut has
    made, both of a pair by as much; where one bounds what is eased in, that ends at it
    still."""
    out = []
    for s in sheet.seams:
        if not s.notches or not any(r.piece == piece for r in s.runs()):
            continue
        corners = [_corners(sheet, chain) for chain in (s.left, s.right)]
        notches = tuple(_moved_off(k, corners) for k in s.notches)
        zone = s.zone
        if zone is not None:
            first, last = (_with_notch(at, s.notches, notches) for at in zone)
            zone = first, last
        out.append(replace(s, notches=notches, zone=zone))
    return sheet.sew(*out)


def _with_notch(
    at: float, before: Sequence[NotchPair], after: Sequence[NotchPair]
) -> float:
    """Where an end of a zone lies when its notch has moved."""
    pairs = zip(before, after, strict=True)
    return next((b.left for a, b in pairs if abs(a.left - at) < NEAR), at)


def _corners(sheet: Sheet, chain: tuple[Run, ...]) -> list[float]:
    """Where the edges of a chain meet, its ends left out."""
    return list(accumulate(sheet.length(r.piece, r.edge) for r in chain[:-1]))


def _moved_off(k: NotchPair, corners: list[list[float]]) -> NotchPair:
    if not k.ticks:  # it stands on a joint
        return k
    room = NOTCH_ROOM + (NOTCH_SET / 2 if k.ticks > 1 else 0.0)
    for side, at, ends in zip(_JOINTS, (k.left, k.right), corners, strict=True):
        near = min(ends, key=lambda c: abs(c - at), default=None)
        if k.note == side or near is None or abs(at - near) >= room:
            continue
        if k.note in _JOINTS:  # it meets the other side's joint, and a corner marks it
            return k._replace(ticks=0)
        if abs(at - near) < DOUBLED:  # it stood there before, as at a centre front
            return k
        by = room - abs(at - near)
        by = by if at >= near else -by
        return k._replace(left=k.left + by, right=k.right + by)
    return k


_JOINTS = JOINT, JOINT_RIGHT
"""Notes of notches that meet a joint of the left, and of the right chain."""

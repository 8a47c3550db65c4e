"""Seams of a button stand: its edge to the facing; other seams run on over it."""

from collections.abc import Iterable
from dataclasses import replace

from clothwright.blocks.torso import in_one
from clothwright.features.chains import LONG, Chains, shares
from clothwright.features.openings.stand_pieces import BACK, FRONT, STAND, Centre
from clothwright.paper import ON_STAND, Ease, NotchPair, Run, Seam, SeamKind, Sheet
from clothwright.truing.tolerances import NOTCH_ROOM

EDGE_CODES = {FRONT: ("S70", "S71", "S72"), BACK: ("S73", "S74", "S75")}
"""Codes of a stand's seams: its edge above and below the waist seam, and the facing's
own waist seam."""

STAND_SEAMS = {
    "S70": "front edge that opens, faced, down to the waist or a torso's hem",
    "S71": "front edge that opens, faced, below the waist",
    "S72": "facing of such a front edge, at the waist",
    "S73": "back edge that opens, faced, down to the waist or a torso's hem",
    "S74": "back edge that opens, faced, below the waist",
    "S75": "facing of such a back edge, at the waist",
    "S118": "front band of a button stand, on front and skirt",
    "S119": "upper end of a front band",
    "S120": "lower end of a front band",
    "S69": "back band of a button stand, on back and skirt",
    "S79": "upper end of a back band",
    "S99": "lower end of a back band",
}
"""What they stand for, beside a button stand or a zip that separates, and those of a
stand that is a band."""


def stand_seams(t: Chains) -> list[Seam]:
    """The edge of the stand, faced, and the two parts of its facing."""
    return [s for centre in (FRONT, BACK) for s in _of(t, centre)]


def _of(t: Chains, centre: Centre) -> Iterable[Seam]:
    upper, lower = (centre.on(t.sheet, c) for c in (centre.upper, centre.lower))
    front = centre is FRONT
    above, below, joined = EDGE_CODES[centre]
    foot = "hem" if in_one(t.sheet) else "waist"
    for code, shell, facing, start, end in (
        (above, upper, centre.facing, "neck", foot),
        (below, lower, centre.low_facing, "waist", "hem"),
    ):
        # a front's loop runs down at the centre, a back's up
        left = t.chain((shell, STAND, not front))
        right = t.chain((facing, STAND, not front))
        if left and right:
            name = f"{centre.words} edge" + (
                ", below the waist" if code == below else ""
            )
            ease = Ease.about(0.0, 0.1)
            at = long_notches(t, left, right) if foot == end == "hem" else ()
            kind = SeamKind.FACED
            yield Seam(code, name, left, right, start, end, ease, None, at, kind)
    left = t.chain((centre.facing, "foot", not front))
    right = t.chain((centre.low_facing, "waist", front))
    if left and right:
        name = f"{centre.words} facing at the waist"
        yield Seam(joined, name, left, right, f"centre {centre.words}", "free edge")


def long_notches(
    t: Chains, left: tuple[Run, ...], right: tuple[Run, ...]
) -> tuple[NotchPair, ...]:
    """Notches of a torso's edge: at the waist and on to the hem."""
    line = t.sheet.run_path(left[0])
    waist = t.sheet.points["CFw"].y - line.start.y
    rest = line.length - waist
    off = t.length(right) - line.length
    places = [waist, *(waist + rest * s for s in shares(rest) if rest >= LONG)]
    return tuple(NotchPair(s, s + off, 1) for s in places)


def over_stands(sheet: Sheet, seams: Iterable[Seam]) -> list[Seam]:
    """The seams, run on over the stand where both their sides end at one."""
    stated = list(seams)
    edges = [e for p in sheet.pieces.values() for e in p.edges]
    if not any(e.name.endswith(ON_STAND) for e in edges):
        return stated
    return [_over(sheet, s) for s in stated]


def _over(sheet: Sheet, s: Seam) -> Seam:
    first = [_stand(sheet, c[0], start=True) for c in (s.left, s.right)]
    last = [_stand(sheet, c[-1], start=False) for c in (s.left, s.right)]
    left, right = s.left, s.right
    a, b = first
    if a is not None and b is not None:
        left, right = (a, *left), (b, *right)
        by = [sheet.length(r.piece, r.edge) for r in (a, b)]
        zone = None if s.zone is None else (s.zone[0] + by[0], s.zone[1] + by[0])
        moved = tuple(
            k._replace(left=k.left + by[0], right=k.right + by[1]) for k in s.notches
        )
        at = (NotchPair(by[0], by[1]),) if min(by) >= NOTCH_ROOM else ()
        s = replace(s, zone=zone, notches=(*at, *moved), start="edge of the stand")
    a, b = last
    if a is not None and b is not None:
        ends = sheet.chain_length(left), sheet.chain_length(right)
        left, right = (*left, a), (*right, b)
        roomy = all(sheet.length(r.piece, r.edge) >= NOTCH_ROOM for r in (a, b))
        at = (NotchPair(*ends),) if roomy else ()
        s = replace(s, notches=(*s.notches, *at), end="edge of the stand")
    return s.over(left, right)


def _stand(sheet: Sheet, run: Run, *, start: bool) -> Run | None:
    """What an edge is on the stand, where the walk begins or ends there."""
    piece = sheet.piece(run.piece)
    beside = piece.before if start is not run.backward else piece.after
    name = run.edge + ON_STAND
    return Run(run.piece, name, run.backward) if beside(run.edge).name == name else None

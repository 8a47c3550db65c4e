"""What the lining is sewn to: itself as the shell is, the facing, the shell's edges
(first garment 15 and 21).

What a seam should measure comes from the shell's seam and the numbers, never from the
lining; a notch is the shell's, found on each side on its own paper.
"""

import math
from collections.abc import Iterator
from dataclasses import replace

from clothwright.features.chains import ARM_STRIP, NECK_STRIP, TOP, Chains
from clothwright.features.linings.bound_lining import caught_seams
from clothwright.features.linings.facing_seams import (
    EVEN,
    FACED,
    back_armhole,
    back_neck_chain,
    edge_notches,
    front_armhole,
    front_neck,
    strap_to_band,
    top_edge,
)
from clothwright.features.linings.lining_joins import facing_joins
from clothwright.features.linings.lining_strips import (
    at_joint,
    beside_band,
    stand_facing,
    strip_seams,
)
from clothwright.features.linings.roll import at_foot
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.linings.sleeve_lining import CAPS, LESS, NEAR, RISE
from clothwright.features.linings.wrap_dress_lining import BEYOND, lined_beyond
from clothwright.paper import (
    JOINT,
    Ease,
    EdgeKind,
    NotchPair,
    Run,
    Seam,
    SeamKind,
    Sheet,
)
from clothwright.truing.tolerances import NOTCH_ROOM

_NEAR = 0.1
"""A lining's seam may differ by this much from what it should measure, cm."""

_MORE = 0.05
"""What a facing's edge, or a roll, may take of one side of a seam more than of the
other, cm."""

_OVER = 0.7
"""A place on the shell and the same on the lining lie no further apart than this, cm:
slack and roll."""

_Chain = tuple[Run, ...]


def with_lining_seams(sheet: Sheet, rho: float, short: float) -> Sheet:
    """The lining sewn as the shell is, and to the facings or to the shell's edges.
    `rho` is the roll of the facing, or of the lining to the edge; below the waist the
    lining hangs `short` cm shorter."""
    sheet = _facings_sewn(sheet)
    return sheet.sew(
        *(
            made
            for s in sheet.seams
            if s.code != BEYOND and (made := _as_shell(sheet, s, rho))
        ),
        *_peplum_on(sheet),
        *facing_joins(sheet, rho, short),
        *strip_seams(sheet, short),
        *beside_band(sheet, short),
        *_bagged(sheet, rho),
        *caught_seams(sheet),
        *_wrapped(sheet, rho),
        *lined_beyond(sheet, rho),
        *_at_waist(sheet, rho),
    )


def _facings_sewn(sheet: Sheet) -> Sheet:
    """The loose edges of the facings are now sewn to the lining."""
    for code in ("FF", "BF", "FFP", "BFP"):
        if code in sheet.pieces:
            p = sheet.piece(code)
            for name in ("free", "panel"):
                if p.has(name):
                    p = p.with_edge(replace(p.edge(name), kind=EdgeKind.SEAM))
            sheet = sheet.put(p)
    return sheet


# -- as the shell --------------------------------------------------------------------
def _as_shell(sheet: Sheet, s: Seam, rho: float) -> Seam | None:
    """The lining's seam where the shell has this one; None when it has none such."""
    left, right = _lined(sheet, s.left), _lined(sheet, s.right)
    if s.kind in (SeamKind.FACED, SeamKind.LAPPED) or not left or not right:
        return None
    # a slanted edge is rolled off the bodice's waist, not off the peplum's, and all of
    # it off the panel beside: its joint to the next lies as the ease lets it
    slant = _beside_slant(sheet, s.left)
    rolled = rho if slant else 0.0
    plan = s.ease.plan + rolled
    notches = (_cap_notches if s.code in CAPS else _notches)(sheet, s)
    # the roll lies at its end, what a peplum yields all along: between two notches one
    # may be there without the other
    near = _NEAR + min(rolled, max(0.0, -s.ease.plan))
    raglan = any(r.edge == "raglan" for r in s.left)
    if s.code in CAPS and not raglan:  # the sleeve's underarm is raised more
        plan, near = s.ease.plan - LESS, NEAR
    return Seam(
        f"L{s.code}",
        f"lining, {s.name}",
        left,
        right,
        s.start,
        s.end,
        Ease.about(plan, _MORE + max(near, s.ease.high - s.ease.plan)),
        _zone(sheet, s, left),
        tuple(n for n in notches if n.ticks or not slant),
        s.kind,
    )


def _lined(sheet: Sheet, chain: _Chain) -> _Chain:
    """The same chain on the lining, as far as it has those edges, and on the facing
    where that takes their place."""
    return tuple(q for run in chain for q in _lined_run(sheet, run))


def _lined_run(sheet: Sheet, run: Run) -> list[Run]:
    found = [Run(f"L.{run.piece}", run.edge, run.backward)]
    facing = stand_facing(sheet, run.piece)
    if facing is not None and run.edge.startswith("waist"):
        upper = facing.has("foot")
        name = run.edge.replace("waist", "foot") if upper else run.edge
        first = upper == facing.code.startswith("FF")  # its waist begins at the centre
        found.insert(0 if first else 1, Run(facing.code, name, run.backward))
    elif run.piece == "BC" and run.edge in _ON_FACING:
        found.append(Run("BF", _ON_FACING[run.edge], run.backward))
    found = [
        r
        for r in found
        if r.piece in sheet.pieces
        and sheet.piece(r.piece).has(r.edge)
        and sheet.edge(r.piece, r.edge).kind is EdgeKind.SEAM
    ]
    return found[::-1] if run.backward else found


_ON_FACING = {"waist": "foot", "panel": "panel"}
"""Edges of the back that run on over its facing, and their names there."""


def _beside_slant(sheet: Sheet, chain: _Chain) -> bool:
    """True for a waist that ends at a slanted edge."""
    return Run("BC", "waist") in chain and sheet.piece("BC").has("slant")


def _zone(sheet: Sheet, s: Seam, left: _Chain) -> tuple[float, float] | None:
    """Where the ease lies, as far as the lining has it."""
    if s.zone is None:
        return None
    most = sheet.chain_length(left)
    cut_off = sheet.chain_length(s.left) - most
    if s.code in CAPS:
        return 0.0, most - (sheet.chain_length(s.left) - s.zone[1] - RISE)
    a, b = (min(most, max(0.0, z - cut_off)) for z in s.zone)
    return a, b


def _notches(sheet: Sheet, s: Seam) -> Iterator[NotchPair]:
    """The shell's notches that lie on the lining, clear of its ends."""
    most = [sheet.chain_length(_lined(sheet, c)) for c in (s.left, s.right)]
    for pair in s.notches:
        a: float | None
        b: float | None
        if abs(pair.left - sheet.chain_length(s.left) / 2) < 1e-6:
            a, b = most[0] / 2, most[1] / 2  # a seam notched at its middle
        else:
            place = _joint if pair.note == JOINT else _place
            a = place(sheet, s.left, pair.left)
            b = _place(sheet, s.right, pair.right)
        if a is None or b is None:
            continue
        if pair.note != JOINT and not _mates(sheet, s, pair, (a, b)):
            a, b = (_from_end(sheet, c, at) for c, at in _sides(s, pair))
        clear = all(
            NOTCH_ROOM <= at <= end - NOTCH_ROOM
            for at, end in zip((a, b), most, strict=True)
        )
        chains = _lined(sheet, s.left), _lined(sheet, s.right)
        if clear and not at_joint(sheet, chains, (a, b)):
            yield pair._replace(left=a, right=b)


def _sides(s: Seam, pair: NotchPair) -> tuple[tuple[_Chain, float], ...]:
    return (s.left, pair.left), (s.right, pair.right)


def _mates(sheet: Sheet, s: Seam, pair: NotchPair, found: tuple[float, float]) -> bool:
    """True when the lining's two notches meet, from the start or from the end, as the
    shell's do. Paper that was turned may show one of them a little off."""
    (a, b), shell = found, [sheet.chain_length(c) for c in (s.left, s.right)]
    mine = [sheet.chain_length(_lined(sheet, c)) for c in (s.left, s.right)]
    start = (b - a) - (pair.right - pair.left)
    end = start - ((mine[1] - mine[0]) - (shell[1] - shell[0]))
    return min(abs(start), abs(end)) <= _MORE or s.zone is not None


def _from_end(sheet: Sheet, chain: _Chain, s: float) -> float:
    """The place as far from the chain's end, or from its start where there is slack."""
    whole, shell = sheet.chain_length(_lined(sheet, chain)), sheet.chain_length(chain)
    return s if whole > shell + _MORE else whole - (shell - s)


def _cap_notches(sheet: Sheet, s: Seam) -> Iterator[NotchPair]:
    """A cap's notches, as far from the raised underarm as they are from the shell's,
    less the rise: below them it goes in flat."""
    whole, a, b = (
        sheet.chain_length(c)
        for c in (s.left, _lined(sheet, s.left), _lined(sheet, s.right))
    )
    for pair in s.notches:
        up = whole - pair.left - RISE
        if pair.left < NOTCH_ROOM:  # the shoulder
            yield pair
        elif min(a, b) - up > NOTCH_ROOM:  # a raglan's upper one may be faced
            yield pair._replace(left=a - up, right=b - up)


def _place(sheet: Sheet, chain: _Chain, s: float) -> float | None:
    """Length along the lining's chain to the place of the shell's; None when it is cut
    away. On paper that was turned since, it is as far from the chain's end."""
    run, p, _ = sheet.chain_at(chain, s)
    from_end = _from_end(sheet, chain, s)
    if from_end == s:  # slack below, nothing cut away
        return s
    done, best = 0.0, (_OVER, from_end if from_end > 0 else None)
    for r in chain:
        for q in _lined_run(sheet, r):
            path = sheet.run_path(q)
            if r == run:
                place, gap = path.nearest(p)
                at = done + path.length_to(place)
                if gap <= best[0] and abs(at - from_end) <= _OVER:
                    best = gap, at
            done += path.length
    return best[1]


def _joint(sheet: Sheet, chain: _Chain, s: float) -> float | None:
    """The same for a joint of the chain: where the lining's own edges meet."""
    done = mine = 0.0
    for r in chain:
        done += sheet.length(r.piece, r.edge)
        mine += sheet.chain_length(_lined_run(sheet, r))
        if abs(done - s) < 1e-6:
            return mine
    return None


def _peplum_on(sheet: Sheet) -> Iterator[Seam]:
    """A peplum's lining that runs on behind the opening."""
    for code in ("L.PB", "L.PBC"):
        if code in sheet.pieces and sheet.piece(code).has("waist on"):
            shell = sheet.seam("S22")
            yield replace(shell, code="LS22", left=(Run(code, "waist on"),))


# -- to the shell --------------------------------------------------------------------
def _bagged(sheet: Sheet, rho: float) -> Iterator[Seam]:
    """A lining to the edge, bagged to the shell's neck, armhole and slanted edge."""
    t = Chains(sheet)
    strips = any(c in sheet.pieces for c in (NECK_STRIP, ARM_STRIP))
    if strips or any(s.kind is SeamKind.FACED for s in sheet.seams):
        return
    for code, like, name, shell, start, end in (
        (
            "LE1",
            "S8",
            "front neck",
            front_neck(t),
            "shoulder",
            "centre front",
        ),
        (
            "LE2",
            "S9",
            "back neck",
            back_neck_chain(t),
            "shoulder",
            "waist" if t.has("BC", "slant") else "centre back",
        ),
        (
            "LE7",
            "S110",
            "front top edge",
            top_edge(t, front=True),
            "centre front",
            "side",
        ),
        (
            "LE8",
            "S111",
            "back top edge",
            top_edge(t, front=False),
            "centre back",
            "side",
        ),
        ("LE3", "S10", "front armhole", front_armhole(t), "tip", "underarm"),
        ("LE4", "S11", "back armhole", back_armhole(t), "tip", "underarm"),
    ):
        lining = t.chain(*((f"L.{r.piece}", r.edge, r.backward) for r in shell))
        ease = FACED
        if code == "LE1" and t.has("F", OVER):
            short, end = at_foot(sheet.piece("F"), rho), "waist"
            ease = Ease(*(e - short for e in FACED))
        if lining:
            yield Seam(
                code,
                f"lining to shell, {name}",
                shell,
                lining,
                start,
                end,
                Ease.about(0.0, EVEN) if shell[0].edge == TOP else ease,
                None,
                edge_notches(t, like, shell, lining),
                SeamKind.FACED,
            )
    yield from strap_to_band(t, "LE5", "L.F", rho)


def _wrapped(sheet: Sheet, rho: float) -> Iterator[Seam]:
    """The linings of fronts that wrap, one on the other at the waist: what lies beyond
    the centre ends at the facing's foot, or inside the edge by the roll."""
    shell = next((s for s in sheet.seams if s.code == "S61"), None)
    if shell is None:
        return
    left, right = _lined(sheet, shell.left), (Run("L.F", OVER, True),)
    front = sheet.piece("F")
    over = front.edge(OVER).path  # from the edge to the centre
    less = rho / math.sin(math.radians(front.interior_angle("neck")))
    if "FF" in sheet.pieces:
        less = over.length_to_point(sheet.edge("FF", "free").path.start)
    plan = over.length - less - sheet.chain_length(left)
    yield replace(
        shell,
        code="LS61",
        name=f"lining, {shell.name}",
        left=left,
        right=right,
        ease=Ease.about(plan, _NEAR),
    )


def _at_waist(sheet: Sheet, rho: float) -> Iterator[Seam]:
    """Lining and facing lie on the bodice's waist: of one length, but for the roll of a
    slanted edge (15)."""
    for code, shell in (("LW1", "S5"), ("LW2", "S6")):
        found = [s for s in sheet.seams if s.code == shell]
        for s in found:
            lining = _lined(sheet, s.left)
            if not lining:
                continue
            less = rho if _beside_slant(sheet, s.left) else 0.0
            yield Seam(
                code,
                f"lining to shell, {s.name}",
                s.left,
                lining,
                s.start,
                s.end,
                Ease.about(-less, _NEAR),
                kind=SeamKind.LAPPED,
            )

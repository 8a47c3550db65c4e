"""What every bodice is sewn by: panels, shoulders, sides, centre back (first garment
21, S1 to S4 and S21)."""

from collections.abc import Iterator
from itertools import accumulate

from clothwright.blocks.torso import in_one
from clothwright.curves import Path, Point
from clothwright.features.chains import CUT_OUT, LONG, TOP, Chains, clear_of, shares
from clothwright.features.skirts.pocket_drawing import PANEL_BAG, mouth_places
from clothwright.features.wholes import zip_end
from clothwright.paper import (
    Ease,
    EdgeKind,
    NotchPair,
    Run,
    Seam,
    SeamKind,
    meetings,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM, NOTCH_SET


def bodice_seams(t: Chains, n: Numbers) -> Iterator[Seam | None]:
    """The seams of front and back among themselves."""
    yield front_panel(t, n)
    yield back_panel(t, n)
    yield from _shoulders(t, n)
    yield _side(t, n)
    yield _centre_back(t, n)


def front_panel(t: Chains, n: Numbers) -> Seam | None:
    """The panel seam of the front, None where there is none."""
    left = t.chain(("FC", "panel", True))
    right = t.chain(("FS", "panel", False))
    if not (left and right):
        return None
    bp = t.sheet.points["BP"]
    at = t.upto(left, bp)
    total_l, total_r = t.length(left), t.length(right)
    a, b = max(at - 5.0, min(3.0, at / 2)), min(at + 5.0, (at + total_l) / 2)
    return Seam(
        "S1",
        "front panel",
        left,
        right,
        "Qf",
        _foot(t),
        Ease.about(n.ep, 0.1),
        (a, b),
        (
            NotchPair(a, a, 1),
            NotchPair(b, total_r - (total_l - b), 1),
            *_below(t, n, left, right, "CFw", 1),
        ),
    )


def back_panel(t: Chains, n: Numbers) -> Seam | None:
    """The panel seam of the back, None where there is none."""
    left = t.chain(("BC", "panel", False))
    right = t.chain(("BS", "panel", True))
    if not (left and right):
        return None
    at = t.upto(left, t.sheet.points["Pd"])
    first, second = min(6.0, at - 2.0), at + 4.0
    rest = t.length(left) - second
    return Seam(
        "S2",
        "back panel",
        left,
        right,
        "Qb",
        _foot(t),
        Ease.about(0.0, 0.1),
        None,
        (
            NotchPair(first, first, 2),
            NotchPair(second, t.length(right) - rest, 2),
            *_below(t, n, left, right, "CBw", 2),
        ),
    )


def _foot(t: Chains) -> str:
    """Where a seam from above ends: at the waist, or at the hem of a torso."""
    return "hem" if in_one(t.sheet) else "waist"


def _below(
    t: Chains,
    n: Numbers,
    left: tuple[Run, ...],
    right: tuple[Run, ...],
    centre: str,
    ticks: int,
) -> tuple[NotchPair, ...]:
    """Notches of a torso's panel seam: at the waist and on to the hem, as far from the
    hem on both sides; or as far from the seam across it."""
    if not (in_one(t.sheet) or "dd" in n):
        return ()
    level = t.sheet.points[centre].y
    a, c = t.length(left), t.length(right)
    across = Path.line(Point(-60.0, level), Point(200.0, level))
    fault = (
        f"the panel seam of the {t.sheet.piece(left[0].piece).name.lower()} does not "
        "reach the waist: measure NWB, NFW and NBP again"
    )
    rest = a - meetings(t.sheet.run_path(left[0]), across, fault)[0][0]
    places = [rest, *(rest * (1 - s) for s in shares(rest))]
    if centre == "CFw":
        mouth = mouth_places(t.sheet, n, PANEL_BAG)
        places = sorted(clear_of(places, [rest - s for s in mouth]), reverse=True)
    return tuple(NotchPair(a - s, c - s, ticks) for s in places)


def _shoulders(t: Chains, n: Numbers) -> list[Seam]:
    out = []
    split = bool(t.chain(("FS", "shoulder", True)))
    if split:
        for code, name, f, b, start, end in (
            ("S3", "shoulder, neck side", "FC", "BC", "neck", "panel"),
            ("S3a", "shoulder, tip side", "FS", "BS", "panel", "tip"),
        ):
            left = t.chain((f, "shoulder", True))
            right = t.chain((b, "shoulder", False))
            if left and right:
                out.append(
                    Seam(
                        code,
                        name,
                        left,
                        right,
                        start,
                        end,
                        Ease.about(n.se_left * t.length(left) / n.Lr, 0.05),
                    )
                )
        return out
    left = t.chain(
        ("FC", "shoulder", True), ("F", "shoulder neck", True), ("F", "shoulder", True)
    )
    right = t.chain(("BC", "shoulder", False), ("B", "shoulder", False))
    if not (left and right):
        return []
    a, c = t.length(left), t.length(right)
    notch = (NotchPair(a / 2, c / 2, 1),) if a >= 8 else ()
    return [
        Seam(
            "S3",
            "shoulder",
            left,
            right,
            "neck",
            "tip",
            Ease.about(n.se_left, 0.05),
            None,
            notch,
        )
    ]


def _side(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(
        ("FS", "side", True),
        *(
            (c, e, True)
            for c in ("FS", "F")
            for e in ("side high", "side mid", "side low")
        ),
        ("F", "side", True),
    )
    right = t.chain(("BS", "side", False), ("B", "side", False))
    if not (left and right):
        return None
    at = 0.4 * t.length(left)
    if len(left) > 1:  # the notch keeps clear of the side darts
        at = t.length(left) - 0.4 * t.length(left[-1:])
    other = t.length(right) - (t.length(left) - at)
    if in_one(t.sheet) or "dd" in n:
        return _long_side(t, n, left, right)
    notches = [NotchPair(at, other, 1)]
    if "z_top" in n:  # a zip begins there; the other notch keeps clear of it
        top = _clear_of_darts(t, left, n.z_top)
        notches = [k for k in notches if k.left > top + 2 * NOTCH_ROOM]
        notches.insert(0, NotchPair(top, top, 2))
    return Seam(
        "S4",
        "side",
        left,
        right,
        "underarm",
        "waist",
        Ease.about(0.0, 0.1),
        None,
        tuple(notches),
    )


def _long_side(
    t: Chains, n: Numbers, left: tuple[Run, ...], right: tuple[Run, ...]
) -> Seam:
    """The side of a torso, notched at waist and hip and on to the hem, or at the waist
    above a seam across it, and where a zip begins and ends."""
    at = t.sheet.points
    waist, hip = (t.upto(right, at[mark]) for mark in ("wb", "Hbs"))
    rest = t.length(right) - hip if in_one(t.sheet) else 0.0
    places = [waist, hip] if rest > NOTCH_ROOM else [waist]
    places += [hip + rest * s for s in shares(rest) if rest >= LONG]
    notches = [NotchPair(s, s, 1) for s in places]
    if "z_top" in n:
        ends = [_clear_of_darts(t, left, n.z_top), waist + zip_end(n)]
        ends = [s for s in ends if s < t.length(right) - NOTCH_ROOM]
        room = NOTCH_ROOM + NOTCH_SET / 2
        notches = [k for k in notches if all(abs(k.left - s) > room for s in ends)]
        notches += [NotchPair(s, s, 2) for s in ends]
        notches.sort(key=lambda k: k.left)
    return Seam(
        "S4",
        "side",
        left,
        right,
        "underarm",
        _foot(t),
        Ease.about(0.0, 0.1),
        None,
        tuple(notches),
    )


def _clear_of_darts(t: Chains, side: tuple[Run, ...], at: float) -> float:
    """A place on the side moved, where need be, so that a set of notches keeps clear of
    the side darts (19)."""
    room = NOTCH_ROOM + NOTCH_SET / 2
    for joint in accumulate(t.length((run,)) for run in side[:-1]):
        if abs(at - joint) < room:
            at = joint + room if joint < 2 * room or at > joint else joint - room
    return at


def _centre_back(t: Chains, n: Numbers) -> Seam | None:
    chain = t.chain(
        ("BC", "cb", True), ("B", "cb", True), ("PB", "cb", True), ("PBC", "cb", True)
    )
    chain = tuple(
        r for r in chain if t.sheet.edge(r.piece, r.edge).kind is EdgeKind.SEAM
    )
    if not chain:
        return None
    stop = t.length(chain[:1]) + n.z  # the zip ends below the waist
    if in_one(t.sheet) or "dd" in n:  # a torso's runs on below it
        stop = t.upto(chain, t.sheet.points["CBz"]) + zip_end(n)
    rest = t.length(chain) - stop
    places = [stop] if rest > NOTCH_ROOM else []
    places += [stop + rest * s for s in shares(rest)] if rest >= LONG else []
    room = 2 * NOTCH_ROOM  # of the seam across a torso, on its lining too
    for run in chain[:1] if "dd" in n else ():
        at = t.sheet.length(run.piece, run.edge)
        places = [at + room if stop < s and abs(s - at) < room else s for s in places]
    return Seam(
        "S21",
        "centre back",
        chain,
        chain,
        next((e for e in (TOP, CUT_OUT) if t.has(chain[0].piece, e)), "neck"),
        "vent" if t.has(chain[-1].piece, "vent") else "hem",
        Ease.about(0.0, 0.05),
        notches=tuple(NotchPair(s, s) for s in places),
        kind=SeamKind.TWIN,
    )

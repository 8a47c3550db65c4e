"""Checks of a torso on the finished draft (blocks D1 to D5)."""

import math
from collections.abc import Iterable

from clothwright.blocks import torso
from clothwright.blocks.torso_rules import (
    BACK_WIDEST,
    CENTRE_WIDEST,
    FRONT_WIDEST,
)
from clothwright.curves import distance
from clothwright.features.bodice.dropped import LOWER, open_legs
from clothwright.features.bodice.torso_widths import half_at
from clothwright.features.skirts.peplum_rules import body_at
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.features.skirts.straight_skirt import stride
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers

GIVES = 0.3
"""A fish-eye dart's edge stretches so far, both halves together, cm (D4, D5)."""

ROUND = 8.0
"""Least radius of the side through the waist, cm (D4)."""

_OPEN = 18.0
"""What is open so far below the last button is as good as a vent, cm (its usual height,
transformations 7)."""

_UNBUTTONED = (
    f"Flare the side (fl), or leave {_OPEN:g} cm open below the last button (b hem)."
)


def torso_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Girths, sides, darts and room of a torso."""
    yield from _girths(n, sheet)
    yield from _side(sheet)
    yield from _darts(n, sheet)
    yield from _room(n, sheet)
    if "dd" in n:
        yield from _at_seam(n, sheet)
    hung = _hems(sheet)
    opens = any(sheet.piece(c).has(e) for c in hung for e in ("vent", SLIT))
    if n.below_hip > n.WH:  # longer than a tunic
        hem = 2 * sum(sheet.length(c, "hem") for c in hung)
        if "cbs" in n:
            yield from stride(n, hem, opens=opens)
        elif "b_hem" in n:
            yield from stride(n, hem, opens=n.b_hem >= _OPEN, cure=_UNBUTTONED)
        else:
            yield from stride(n, hem, opens=False, cure="Flare the side (fl).")


def _girths(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Waist and hip are body and ease (D1), but of a tent, which hangs free."""
    if "theta_h" in n:
        return
    hip = ("hip", n.yW + n.WH, n.H_S + n.Eh, "Eh")
    for place, level, aim, symbol in (
        ("waist", n.yW, n.W + n.Ew, "Ew"),
        *((hip,) if _reaches(n, n.WH) else ()),
    ):
        girth = 2 * half_at(n, sheet, level - n.yW)
        if abs(girth - aim) > 0.1:
            yield Finding(
                "D1",
                Severity.REFUSE,
                f"The {place} of the torso measures {girth:.1f} cm and should be "
                f"{aim:.1f} cm.",
                symbol,
                "Measure W, H and WH again.",
                {"is": girth, "aim": aim},
            )


def _side(sheet: Sheet) -> Iterable[Finding]:
    """The side is round through the waist (D4)."""
    for code, name in (
        ("B", "side"),
        ("BS", "side"),
        ("F", "side low"),
        ("FS", "side low"),
    ):
        if code not in sheet.pieces:
            continue
        edge = sheet.piece(code)
        path = edge.edge(name if edge.has(name) else "side").path
        at = path.length_to_point(sheet.points["wb" if code[0] == "B" else "wf"])
        a, b = (path.direction_at_length(at + k) for k in (-1.0, 1.0))
        bend = abs(math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y))
        if bend > 2.0 / ROUND:
            yield Finding(
                "D4",
                Severity.WARN,
                f"The side of {sheet.piece(code).name.lower()} bends with a radius of "
                f"only {2.0 / bend:.0f} cm at the waist; {ROUND:g} cm lies flat.",
                "a'",
                "Give the waist more ease (Ew), or take a waist seam and a skirt.",
                {"radius": 2.0 / bend},
            )


def stretch(width: float, above: float, below: float) -> float:
    """How far the folded edge of a fish-eye dart must stretch to lie flat, its depth
    above and below the waist, all cm (D5, exact)."""
    return sum(math.hypot(h, width / 2) - h for h in (above, below))


def _darts(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """No fish-eye dart is wider than its edge stretches (D4, D5)."""
    for code, half, width, most in (
        ("B", "back", n.bd_net, BACK_WIDEST),
        ("F", "front", n.fd, FRONT_WIDEST),
    ):
        strain = _strain(sheet, code)
        if strain is None:
            continue
        if width > most + 0.05 or strain > GIVES + 0.01:
            yield Finding(
                "D5",
                Severity.WARN,
                f"The {half} waist dart takes in {width:.1f} cm, and its edge would "
                f"have to stretch by {strain:.1f} cm; {most:g} cm and {GIVES:g} cm lie "
                "flat.",
                "fd" if code == "F" else "bd",
                "Clip its fold at the waist and stretch it with the iron; or take "
                "princess lines, or a waist seam and a skirt.",
                {"width": width, "strain": strain},
            )
    if n.x_back > CENTRE_WIDEST:
        yield Finding(
            "D3",
            Severity.WARN,
            f"The centre back is taken in by {n.x_back:.1f} cm; {CENTRE_WIDEST:g} cm "
            "is the most for a seam down the middle.",
            "cbs",
            "Make it smaller.",
            {"cbs": n.x_back},
        )


def _strain(sheet: Sheet, code: str) -> float | None:
    """How far the folded edge of a half's waist dart must stretch, cm; None without
    one that runs on below the waist."""
    if torso.fish_eye(sheet, code) is not None:
        top, a, low, b = torso.fish_eye_ends(sheet, code)
        return stretch(distance(a, b), abs(a.y - top.y), abs(low.y - a.y))
    legs = open_legs(sheet, code)
    if not legs:
        return None
    first, second = (leg.segments for leg in legs)
    wide = distance(first[0].end, second[-1].start)
    left = distance(first[0].start, second[-1].end)
    above = abs(first[1].end.y - first[1].start.y)
    below = abs(first[0].end.y - first[0].start.y)
    return (
        stretch(wide, above, 0.0)
        - wide / 2
        + math.hypot(below, (wide - left) / 2)
        - below
    )


def _at_seam(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The seam below the waist clears the body as the high hip is cleared (D6)."""
    wide = 2 * sum(
        e.length
        for c in torso.PIECES
        if c in sheet.pieces
        for e in sheet.piece(c).edges
        if e.name.startswith("waist")
    )
    body = body_at(n, n.dd)
    if wide < body + 1.0:
        yield Finding(
            "D9",
            Severity.REFUSE if wide < body - 2.0 else Severity.WARN,
            f"The seam below the waist measures {wide:.1f} cm, and the body under it "
            f"{body:.1f} cm; 1 cm of room at least is wanted.",
            "dd",
            "Give the hip (Eh) or the waist (Ew) more ease, or lay the seam (dd) "
            "elsewhere.",
            {"seam": wide, "body": body},
        )


def _reaches(n: Numbers, below: float) -> bool:
    """True when the torso, or what is cut off it, lies so far below the waist."""
    return "L_T" not in n or below <= n.dd


def _hems(sheet: Sheet) -> list[str]:
    """Codes of the pieces that end in the hem of the torso."""
    codes = (*torso.PIECES, *(code for code, _ in LOWER.values()))
    return [c for c in codes if c in sheet.pieces and sheet.piece(c).has("hem")]


def _room(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """It clears the high hip (C9, as K8 of a skirt)."""
    if not _reaches(n, n.WHH):
        return
    room = 2 * half_at(n, sheet, n.WHH) - n.HH
    if room >= 1.0:
        return
    yield Finding(
        "D6",
        Severity.REFUSE if room < -2.0 else Severity.WARN,
        f"Over the high hip the torso has {room:.1f} cm of room; 1 cm at least is "
        "wanted.",
        "HH",
        "Measure HH and WHH again, or give the hip more ease (Eh).",
        {"room": room},
    )

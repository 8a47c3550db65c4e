"""What a low open back has to be checked for (first garment 9, 25). Lengths cm."""

from collections.abc import Iterable

from clothwright.curves import Pair, Path, Point, degrees_between
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing.tolerances import SIXTEENTH

MOST_TURN = 6.0
"""A tightened edge bends its panel seam by no more than this, degrees (9.5)."""


def findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """All checks of a low open back on the finished draft."""
    if n.y1 > n.yB + 4:
        yield Finding(
            "O1",
            Severity.WARN,
            "The open back reaches below the line of the brassiere.",
            "Do",
            "Say so to the client, or make it less deep.",
            {"Do": n.Do},
        )
    if n.e2 > n.e1:
        yield Finding(
            "O2",
            Severity.WARN,
            "The slanted edges stand further apart at the waist than at the top.",
            "e2",
            "Look whether that is meant.",
            {"e1": n.e1, "e2": n.e2},
        )
    yield from _corner_findings(n)
    yield from _set_in_findings(n, sheet)
    yield from _tightening_findings(n, sheet)
    yield from _width_findings(sheet)


def _corner_findings(n: Numbers) -> Iterable[Finding]:
    """The corner between neck and slanted edge (9.3)."""
    inside = n.corner_E1
    if not 100 <= inside <= 175:
        yield Finding(
            "O4",
            Severity.WARN,
            f"Neck and slanted edge meet in a corner of {inside:.0f}°; 100° to 175° "
            "sews and turns well.",
            "E1",
            "Change the depth of the open back, or its set-in at the top.",
            {"corner": inside},
        )


def _set_in_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The set-ins measured again from the centre back on the finished piece (9.4)."""
    edge = sheet.edge("BC", "slant").path  # E2 up to E1
    rows = [("waist", n.e2, edge.start.x)]
    if n.te == 0:  # a tightened edge lies where its wedge brought it
        y = (n.y1 + n.yW) / 2
        [across] = _across(_from_top(edge), [y])
        rows.append(("middle", (n.e1 + n.e2) / 2, across))
    for where, ordered, drawn in rows:
        if abs(drawn - ordered) > 0.1:
            yield Finding(
                "O5",
                Severity.REFUSE,
                f"At the {where} the set-in of the slanted edge is {drawn:.1f} cm "
                f"instead of {ordered:.1f} cm.",
                "BC.slant",
                "Redraw the slanted edge.",
                {"ordered": ordered, "drawn": drawn},
            )
    if n.rc == 0 or n.te > 0:
        return
    level = Path.line(Point(-5.0, n.y1), Point(n.xs, n.y1))
    hits = sheet.edge("BC", "neck").path.meets(level)
    drawn = min((level.at_length(s).x for _, s in hits), default=n.e1)
    if drawn - n.e1 > SIXTEENTH:  # less goes unseen
        yield Finding(
            "O5",
            Severity.NOTE,
            f"The rounded corner takes {drawn - n.e1:.1f} cm at the top: there the "
            f"set-in is {drawn:.1f} cm.",
            "E1",
            "",
            {"ordered": n.e1, "drawn": drawn},
        )


def _tightening_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    if n.te == 0:
        return
    hinge, was, now = (sheet.points[name] for name in ("Jt", "M", "M′"))
    turn = degrees_between(was - hinge, now - hinge)
    if turn > MOST_TURN:
        yield Finding(
            "O6",
            Severity.WARN,
            f"Tightening the slanted edge bends the panel seam by {turn:.1f}°; up to "
            f"{MOST_TURN:.0f}° blends.",
            "te",
            "Tighten less, or take the rest in the panel seam.",
            {"turn": turn},
        )


def _width_findings(sheet: Sheet) -> Iterable[Finding]:
    """The strip of back between slanted edge and panel seam (9.6)."""
    bc = sheet.piece("BC")
    narrow = narrower_strip(bc.edge("slant").path, bc.edge("panel").path, 4.0)
    if narrow is None:
        return
    if narrow < 2.5:
        yield Finding(
            "O3",
            Severity.REFUSE,
            f"The back is only {narrow:.1f} cm wide beside the open edge; "
            "2.5 cm must stay.",
            "BC",
            "Make the set-ins (e1, e2) smaller.",
            {"width": narrow},
        )
    else:
        yield Finding(
            "O3",
            Severity.WARN,
            f"The back is only {narrow:.1f} cm wide beside the open edge.",
            "BC",
            "Smaller set-ins would leave more.",
            {"width": narrow},
        )


def narrower_strip(slant: Path, panel: Path, than: float) -> float | None:
    """Least level width between the slant and the panel edge, cm, to 0.1 mm, where it
    is less than so much; else None."""
    if slant.straight and _beyond(slant, panel) > than:  # as most are
        return None
    inner, outer = _from_top(slant), _from_top(panel)
    top, bottom = max(inner[0][1], outer[0][1]), inner[-1][1]
    levels = sorted([top + (bottom - top) * i / 24 for i in range(25)])
    both = zip(_across(inner, levels), _across(outer, levels), strict=True)
    least = min([there - here for here, there in both])
    return least if least < than else None


def _beyond(slant: Path, panel: Path) -> float:
    """How far square to a straight slant the panel edge stays outside it, at least, cm:
    level widths are no less."""
    x, y = slant.start_direction
    u, v = (-y, x) if y < 0 else (y, -x)
    off = min([u * px + v * py for s in panel.segments for px, py in s.points])
    return off - u * slant.start.x - v * slant.start.y


def _from_top(path: Path) -> list[Pair]:
    """A line that runs up or down as points from its top."""
    points = path.chords(0.01)
    if points[0][1] >= points[-1][1]:
        points.reverse()
    return points


def _across(points: list[Pair], levels: list[float]) -> list[float]:
    """Where a line from its top stands at levels, the highest first."""
    out: list[float] = []
    i, last = 1, len(points)
    for y in levels:
        while i < last and points[i][1] < y:
            i += 1
        if i == last:
            out.append(points[-1][0])
            continue
        (ax, ay), (bx, by) = points[i - 1], points[i]
        t = (y - ay) / (by - ay) if by > ay else 0.0
        out.append(ax + (bx - ax) * t if t > 0.0 else ax)
    return out

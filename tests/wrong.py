"""Paper drawn wrongly on purpose, to see whether the checks notice."""

import math
from collections.abc import Callable

from clothwright.curves import Line, Path, Vector
from clothwright.findings import Severity
from clothwright.order import Draft
from clothwright.paper import Sheet
from clothwright.truing import walk


def longer(sheet: Sheet, piece: str, edge: str, by: float) -> Sheet:
    """The sheet with one edge `by` cm longer: a tent drawn at its middle, its ends and
    all else kept."""
    p = sheet.piece(piece)
    e = p.edge(edge)
    path = e.path
    half = min(0.5, path.length / 8)
    a, b = (path.length / 2 + k * half for k in (-1, 1))
    start, end = path.at_length(a), path.at_length(b)
    base = Line(start, end).length
    up = math.sqrt(((b - a + by) / 2) ** 2 - (base / 2) ** 2)
    u = Line(start, end).start_direction
    top = start + u * (base / 2) + Vector(-u[1], u[0]) * up
    bent = Path(
        (
            *path.between(0.0, a).pinned(path.start, start).segments,
            Line(start, top),
            Line(top, end),
            *path.between(b, path.length).pinned(end, path.end).segments,
        )
    )
    return sheet.put(p.with_edge(type(e)(e.name, bent, e.kind)))


def severity_of(sheet: Sheet, code: str) -> Severity | None:
    """What the walk of a seam says, its stretches included; the gravest."""
    w = walk(sheet, sheet.seam(code))
    said = [w.severity, *(s.severity for s in w.segments)]
    for grave in (Severity.REFUSE, Severity.WARN):
        if grave in said:
            return grave
    return None


def unnoticed(made: Draft, only: Callable[[str], bool]) -> list[str]:
    """Every edge of the seams chosen that may be 0.3 cm longer without a doubt, or
    0.6 cm without a refusal."""
    found = []
    for seam in made.sheet.seams:
        if not only(seam.code):
            continue
        for run in dict.fromkeys(seam.runs()):
            for by, least in ((0.3, (Severity.WARN, Severity.REFUSE)), (0.6, ())):
                said = severity_of(
                    longer(made.sheet, run.piece, run.edge, by), seam.code
                )
                if said not in (least or (Severity.REFUSE,)):
                    found.append(f"{seam.code} {run} +{by}: {said}")
    return found

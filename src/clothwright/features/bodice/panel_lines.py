"""What all panel lines share: where they start and how steeply, the cut down to the
dart's point, and a corner rounded over the point (first garment 5 to 7).
"""

from collections.abc import Iterator
from dataclasses import dataclass

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    Path,
    Point,
    Vector,
    bearing,
    degrees_between,
    direction,
    heading,
)
from clothwright.features.base import Number
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    PaperError,
    Piece,
    Spot,
    Verb,
    cut,
)
from clothwright.rules import Kind
from clothwright.truing import Fillet, arc_like

FROM_UNDERARM, FROM_TIP = 6.0, 4.0
"""A line that starts on the armhole keeps this far from its ends, cm (5.1)."""

BESIDE_NECK = 1.0
"""A panel is so wide beside the neck at least, cm: its allowances meet there (our own
choice)."""


@dataclass(frozen=True)
class PanelLine:
    """A panel line of one half, by the names of our notes."""

    half: str
    piece: str
    pitch: str
    start: str
    """Point where it leaves the edge of the piece."""

    apex: str
    """Point of the waist dart that it runs into."""

    leg: str
    """Leg of the dart that ends at the apex, clockwise round the piece."""

    seam: str
    into: tuple[tuple[str, str], tuple[str, str]]
    """The two panels, code and name, clockwise from the start."""

    share: str
    source: str
    centre: float
    """Where the centre of the half lies: 1 to the right, -1 to the left."""

    steep: tuple[float, float]
    """How steeply it may leave the armhole, degrees below the horizontal."""


FRONT = PanelLine(
    "front",
    "F",
    "pf",
    "Qf",
    "BP",
    "leg cf",
    "S1",
    (("FC", "Centre front"), ("FS", "Side front")),
    "share_f",
    "first garment 5",
    1.0,
    (15.0, 60.0),
)
BACK = PanelLine(
    "back",
    "B",
    "pb",
    "Qb",
    "Pd",
    "leg side",
    "S2",
    (("BS", "Side back"), ("BC", "Centre back")),
    "share_b",
    "first garment 6.2",
    -1.0,
    (0.0, 50.0),
)


def share_of_armhole(line: PanelLine) -> Number:
    """The number that starts a line elsewhere than at the pitch."""
    return Number(
        line.share,
        line.share.replace("_", " "),
        f"start of the {line.half} line, share of the armhole from the underarm",
        f"{line.source}.1",
        low=0.30,
        high=0.65,
        kind=Kind.RATIO,
    )


_OFF = 0.01
"""A pitch that lies further off the armhole is not on it, cm."""


def start_on_armhole(
    d: Drafting, line: PanelLine, armhole: Path, *, at_pitch: bool
) -> Point:
    """Mark the start of a line: the pitch, or a share of the armhole, which runs from
    the underarm to the tip. Raises PaperError within 6 cm of the underarm or 4 cm of
    the tip, and at a pitch that is off the armhole."""
    title = f"start of the {line.half} panel line"
    pitch = d[line.pitch]
    along = armhole.length_to_point(pitch)
    if not at_pitch:
        along = armhole.length * d.n[line.share]
    if along < FROM_UNDERARM or armhole.length - along < FROM_TIP:
        raise PaperError(
            f"the {line.half} panel line starts too near the end of the armhole: make "
            f"its share another, so that it keeps {FROM_UNDERARM:g} cm from the "
            f"underarm and {FROM_TIP:g} cm from the tip"
        )
    if at_pitch and armhole.nearest(pitch)[1] > _OFF:
        raise PaperError(
            f"the {line.half} panel line would start at the pitch, which lies off the "
            "armhole as it is drawn in here: set share, and it starts at a share of "
            "the armhole's length"
        )
    if at_pitch:
        return d.found(line.start, pitch, f"{title}, at the pitch")
    return d.found(
        line.start,
        armhole.at_length(along),
        f"{title} on the armhole",
        amounts=(("along the armhole from the underarm", along),),
    )


@dataclass(frozen=True)
class UpperCurve:
    """The panel line from its edge to the dart's point, and how steeply it leaves."""

    path: Path
    wanted: float
    """As it would leave by itself, degrees below the horizontal, 0 to the centre."""

    drawn: float
    allowed: tuple[float, float]


def from_armhole(line: PanelLine, q: Point, apex: Point, base: Point) -> UpperCurve:
    """From the armhole at `q` into the dart's centre leg, apex to base (5.2, 6.2)."""
    return _upper(line, q, apex, base, line.steep)


def from_shoulder(
    line: PanelLine, q: Point, apex: Point, base: Point, shoulder: Vector
) -> UpperCurve:
    """The same from the shoulder, whose direction is neck to tip: 65° to 85° below the
    horizontal, within 10° of square to it (7.2)."""
    square = 90.0 - heading(Vector(-line.centre * shoulder.x, shoulder.y))
    low, high = (clip(v, square - 10.0, square + 10.0) for v in (65.0, 85.0))
    return _upper(line, q, apex, base, (low, high))


def _upper(
    line: PanelLine, q: Point, apex: Point, base: Point, allowed: tuple[float, float]
) -> UpperCurve:
    arrive = direction(apex, base)
    path = arc_like(q, apex, arrive)
    leave = path.start_direction
    wanted = heading(Vector(line.centre * leave.x, leave.y))
    drawn = clip(wanted, *allowed)
    if abs(drawn - wanted) > 1e-9:
        down = bearing(drawn)
        path = arc_like(q, apex, arrive, Vector(line.centre * down.x, down.y))
    return UpperCurve(path, wanted, drawn, allowed)


def start_findings(line: PanelLine, upper: UpperCurve) -> Iterator[Finding]:
    """A note where a line was not let leave its edge as it would (5.2, 6.2, 7.2)."""
    if abs(upper.drawn - upper.wanted) < 0.5:  # the same in whole degrees
        return
    low, high = upper.allowed
    yield Finding(
        "P9",
        Severity.NOTE,
        f"The {line.half} panel line would leave its start ({line.start}) "
        f"{upper.wanted:.0f}° below the horizontal; it is drawn at {upper.drawn:.0f}°, "
        f"within {low:.0f}° to {high:.0f}°.",
        line.start,
        "",
        {"wanted": upper.wanted, "drawn": upper.drawn},
    )


def neck_findings(line: PanelLine, centre: Piece) -> Iterator[Finding]:
    """A line from the shoulder keeps clear of a wide or a deep neck, so that a centre
    panel is left beside it."""
    if not centre.has("neck"):
        return
    neck, panel = centre.edge("neck").path, centre.edge("panel").path
    if neck.clear_of(panel, BESIDE_NECK):
        return
    steps = round(neck.length) + 1
    along = (neck.at_length(neck.length * i / steps) for i in range(steps + 1))
    least = min(panel.nearest(p)[1] for p in along)
    met = bool(neck.meets(panel))
    if least >= BESIDE_NECK and not met:
        return
    says = "crosses the neck" if met else f"comes within {least:.1f} cm of the neck"
    depth = "Df" if line.half == "front" else "Db"
    yield Finding(
        "P15",
        Severity.REFUSE,
        f"The {line.half} panel line {says}; {BESIDE_NECK:g} cm must stay between "
        "them.",
        f"{centre.code}.panel",
        "Start the line nearer to the tip (share s), or make the neck narrower (dw) or "
        f"less deep ({depth}).",
        {"least": 0.0 if met else least},
    )


def draw_line(d: Drafting, line: PanelLine, upper: Path) -> None:
    """Draw a panel line's upper curve."""
    d.draw(
        f"{line.half} panel, upper",
        upper,
        f"{line.half} panel line",
        frm=(line.start, line.apex),
        detail="an even curve that runs into the dart's centre leg without a corner",
    )


def divide(d: Drafting, line: PanelLine, start: Spot, upper: Path) -> None:
    """Cut a half from `start` along `upper` to the dart's point, and so down it."""
    sheet = cut(
        d.sheet,
        line.piece,
        upper,
        start,
        CornerAfter(line.leg),
        edge="cut",
        seam=line.seam,
        seam_name=f"{line.half} panel",
        into=line.into,
    )
    d.lay(
        Verb.CUT,
        sheet,
        ", ".join(sorted(code for code, _ in line.into)),
        f"{line.half} divided on the panel line",
        lines=(upper,),
    )


def rounded(upper: Path, lower: Path, fillet: Fillet, gap: float = 0.0) -> Path:
    """Two lines joined over their corner by a fillet of one cubic.

    `upper` ends where `lower` begins, or a `gap` above it; the handles grow by a third
    of the gap.
    """
    t = min(fillet.tangent, 0.4 * upper.length, 0.4 * lower.length)
    if t < 0.05 and gap < 1e-6:  # too small to draw, or no corner at all
        return upper + lower
    a = upper.before(upper.place_at_length(upper.length - t))
    b = lower.after(lower.place_at_length(t))
    arc = fillet.between(a.end, a.end_direction, b.start, b.start_direction, gap)
    return a + arc + b


def joined(first: Path, second: Path) -> Path:
    """Two parts of an edge in one line, rounded over their corner."""
    return rounded(first, second, Fillet.of(corner(first, second)))


def corner(upper: Path, lower: Path) -> float:
    """Degrees by which the way turns from the end of one line into the next."""
    return degrees_between(upper.end_direction, lower.start_direction)

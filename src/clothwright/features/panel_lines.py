"""What all panel lines share: where they start, the cut down to the dart's point, and
a corner rounded over the point (first garment 5 to 7).
"""

from dataclasses import dataclass

from clothwright.curves import Path, Point, degrees_between
from clothwright.features.base import Number
from clothwright.paper import CornerAfter, Drafting, Verb, cut, spot_on
from clothwright.rules import Kind
from clothwright.truing import Fillet


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


FRONT = PanelLine(
    "front",
    "F",
    "pf",
    "Qf",
    "BP",
    "leg cf",
    "S1",
    (("FC", "Front"), ("FS", "Side front")),
    "share_f",
    "first garment 5",
)
BACK = PanelLine(
    "back",
    "B",
    "pb",
    "Qb",
    "Pd",
    "leg side",
    "S2",
    (("BS", "Side back"), ("BC", "Back")),
    "share_b",
    "first garment 6.2",
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


def start_on_armhole(
    d: Drafting, line: PanelLine, armhole: Path, *, at_pitch: bool
) -> Point:
    """Mark the start of a line: the pitch, or a share of the armhole, which runs from
    the underarm to the tip."""
    title = f"start of the {line.half} panel line"
    if at_pitch:
        return d.found(line.start, d[line.pitch], f"{title}, at the pitch")
    along = armhole.length * d.n[line.share]
    return d.found(
        line.start,
        armhole.at_length(along),
        f"{title} on the armhole",
        amounts=(("along the armhole from the underarm", along),),
    )


def divide(d: Drafting, line: PanelLine, edge: str, upper: Path) -> None:
    """Cut a half from `edge` along `upper` to the dart's point, and so down it."""
    d.draw(
        f"{line.half} panel, upper",
        upper,
        f"{line.half} panel line",
        frm=(line.start, line.apex),
        detail="an even curve that runs into the dart's centre leg without a corner",
    )
    sheet = cut(
        d.sheet,
        line.piece,
        upper,
        spot_on(d.sheet.piece(line.piece), edge, upper.start),
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
    a, _ = upper.split_at_length(upper.length - t)
    _, b = lower.split_at_length(t)
    arc = fillet.between(a.end, a.end_direction, b.start, b.start_direction, gap)
    return a + arc + b


def corner(upper: Path, lower: Path) -> float:
    """Degrees by which the way turns from the end of one line into the next."""
    return degrees_between(upper.end_direction, lower.start_direction)

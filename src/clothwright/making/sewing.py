"""Operations read from the seams: how each is sewn, stated once for its kind of work.

Pressing, clipping and neatening are common practice, no source.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from clothwright.features.chains import CUT_OUT, NAPE, TOP, has_armhole
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.making.garment import Garment
from clothwright.paper import Seam, SeamKind, own_name, own_piece


@dataclass(frozen=True)
class _How:
    """How a kind of seam is sewn."""

    title: str
    says: tuple[str, ...] = ()
    press: str = ""
    task: Task | None = None
    neatened: int = 0
    stitch: Stitch = Stitch.LOCK
    seam_type: SeamType = SeamType.PLAIN


_TURNED = (
    "Trim the allowances in layers, clip the curves, turn; stitch the allowances to "
    "the inner layer as far in as the foot goes.",
)

_HOW: Mapping[Work, _How] = {
    Work.DART: _How(
        "Sew the {darts}",
        ("From the wide end to the point; run off the cloth and tie the ends.",),
        task=Task.DART,
    ),
    Work.PANEL: _How(
        "Sew the {name} seams",
        ("Clip the hollow side where it is sewn to the round one.",),
        "open, over a cushion",
        Task.PANEL,
        2,
    ),
    Work.BAG: _How(
        "Bag out the {piece}",
        (
            "Shell and lining right sides together; leave a hand's width of the lower "
            "edge open, turn, close it by hand.",
        ),
        "flat, the lining a hair inside",
        Task.BAG,
    ),
    Work.SHOULDER: _How("Sew the shoulders", (), "open", Task.SEAMS, 2),
    Work.FACING: _How("Join the pieces of the facing", (), "open"),
    Work.EDGE: _How(
        "Face the {edges}",
        _TURNED,
        "towards the facing, then rolled to the inside",
        Task.FACE,
    ),
    Work.FLAT: _How("Set the sleeves flat", (), "into the sleeve", Task.SLEEVES, 1),
    Work.CUFF: _How("Set the bands", (), "away from the band", Task.CUFFS, 1),
    Work.SLEEVE_SEAM: _How("Sew the sleeve seams", (), "open", Task.SEAMS, 2),
    Work.SLEEVE: _How(
        "Set the sleeves",
        (
            "Run two rows of long stitches over the cap between its notches and draw "
            "them up; the part under the arm goes in flat.",
        ),
        "into the sleeve, the cap only steamed",
        Task.SLEEVES,
        1,
    ),
    Work.SIDE: _How(
        "Sew the sides",
        ("Baste first and try it on.",),
        "open",
        Task.SEAMS,
        2,
    ),
    Work.SKIRT: _How("Sew the {name} seams", (), "open", Task.SEAMS, 2),
    Work.WAIST: _How(
        "Sew the waist", ("Side and panel seams meet.",), "up", Task.WAIST, 1
    ),
    Work.BAND: _How("Set the waistband", (), "into the band", Task.BAND),
    Work.CENTRE: _How("Sew the {name}", (), "open", None, 2),
    Work.LINING: _How(
        "Make the lining", ("In the order listed.",), "open", Task.LINING
    ),
    Work.JOIN: _How(
        "Join the lining to the facing", (), "towards the lining", Task.BY_HAND
    ),
    Work.LINING_ROUND: _How("Close the lining", (), "up at the waist"),
    Work.LINED: _How(
        "Catch the lining in at the waist",
        ("Allowance on allowance, by long stitches inside; it is not seen outside.",),
        task=Task.BY_HAND,
        stitch=Stitch.HAND,
        seam_type=SeamType.LAPPED,
    ),
}


def seam_operations(garment: Garment, told: Iterable[str]) -> list[Operation]:
    """An operation for every seam, or for those that are sewn in one go; `told` are
    the codes of the seams that a feature tells itself."""
    known = set(told)
    groups: dict[tuple[Work, str], list[Seam]] = {}
    for seam in garment.sheet.seams:
        if seam.code not in known:
            groups.setdefault(_together(garment, seam), []).append(seam)
    found = [
        (work, sorted(seams, key=lambda s: _turn(garment, s)))
        for (work, _), seams in groups.items()
    ]
    found.sort(key=lambda pair: _turn(garment, pair[1][0]))
    return [_operation(garment, work, seams) for work, seams in found]


def _turn(garment: Garment, seam: Seam) -> tuple[int, bool]:
    """Darts before panels before what crosses them; what is laid on a seam before it
    is sewn; panels of a skirt before its sides."""
    if seam.kind is SeamKind.LAPPED:
        return -1, False
    return _WORKS.index(garment.work_alike(seam)), seam.left[0].edge != "panel"


_WORKS = list(Work)


def _together(garment: Garment, seam: Seam) -> tuple[Work, str]:
    """Seams of one key are sewn in one go."""
    work = garment.work(seam)
    if work in (Work.DART, Work.PANEL, Work.SKIRT):
        return work, own_piece(seam.code)
    if work is Work.EDGE:
        return work, "armholes" if _of_armhole(seam) else "neck"
    return work, ""


def _operation(garment: Garment, work: Work, seams: list[Seam]) -> Operation:
    how = _HOW[work]
    first = seams[0]
    across = work is Work.PANEL and {r.edge for r in first.runs()} <= _ACROSS
    if across:
        how = replace(how, title="Sew the {name} seam", task=Task.ACROSS)
    elif " to the " in first.name and work is Work.SKIRT:
        how = replace(how, title="Sew the {name}")
    title = how.title.format(
        name=first.name.removesuffix(" seam"),
        darts=_darts(first.name),
        piece=garment.sheet.piece(first.left[0].piece).name.lower(),
        edges=_edges(seams),
    )
    says, press, neatened = how.says, how.press, how.neatened
    if work is Work.EDGE and garment.bagged:
        title = title.replace("Face", "Bag out")
        press = "towards the lining, then rolled to the inside"
    if work is Work.SIDE and len(seams) > 1:
        inner = "lining" if garment.bagged else "facing"
        over = "armhole edge" if has_armhole(garment.sheet) else TOP
        says = (*says, f"Shell and {inner} in one run over the turned {over}.")
    panelled = any(p.has("panel") for p in garment.sheet.pieces.values())
    if work is Work.WAIST and not panelled:
        says = ("The side seams meet.",)
    if work is Work.WAIST and seams[0].kind is SeamKind.LAPPED:
        says = (*says, "The facing's foot is basted on first and caught in.")
    if work is Work.LINING_ROUND and any(s.kind is SeamKind.TWIN for s in seams):
        says = (*says, "A centre seam that opens is sewn only below the opening.")
    if work is Work.DART:
        press = _pressed(first)
    sewn = (s for s in seams if s.kind in (SeamKind.PLAIN, SeamKind.FACED))
    if any(s.gathered and not s.tucked for s in sewn):
        if press.startswith("open"):
            press, neatened = "towards the smooth side", 1
        press += ", the iron not on the gathers"
        if work not in (Work.WAIST, Work.SLEEVE):  # told by what is gathered
            says = (*says, "Two rows of long stitches draw the gathers up.")
    each = how.task in (Task.DART, Task.PANEL)
    count = float(sum(garment.times(s) for s in seams)) if each else 1.0
    return Operation(
        work,
        title,
        says,
        seams=tuple(s.code for s in seams),
        stitch=how.stitch,
        seam_type=how.seam_type,
        neatened=neatened,
        press=press,
        task=how.task,
        count=count,
    )


_ACROSS = {
    *("yoke", "yoke side", "foot of yoke", "under", "under side"),
    "facing yoke",
}
"""Edges of a seam that runs across front or back, from side to side."""


def _pressed(dart: Seam) -> str:
    """Where a dart lies, as its cap is folded (truing 3.2): level and slanting ones
    down, upright ones towards the centre, but those that open at it away from it."""
    legs = {own_name(r.edge).removesuffix(" 2") for r in dart.runs()}
    if any(leg.endswith((" low", " lower")) for leg in legs):
        return "down"
    away = legs & {"dart top side", "dart foot side"}
    return "towards the side" if away else "towards the centre"


def _darts(name: str) -> str:
    """The darts of both sides: "side darts", "second side darts", "bust darts at the
    neck"."""
    second = name.endswith(" 2")
    dart, at, place = name.removesuffix(" 2").partition(" at the ")
    return f"{'second ' if second else ''}{dart}s{at}{place}"


def _edges(seams: list[Seam]) -> str:
    """Neck, or neck and slanted edges, cut-out or slit, or armholes."""
    if _of_armhole(seams[0]):
        return "armholes"
    names = {r.edge for s in seams for r in s.runs()}
    if names <= {"waist", "waist mid", "waist side"}:
        return "waist"
    if names == {TOP}:
        return TOP
    more = [words for edge, words in _BESIDE_NECK.items() if edge in names]
    return " and ".join(("neck", *more[:1]))


_BESIDE_NECK: Mapping[str, str] = {
    "slant": "the slanted edges",
    CUT_OUT: "the cut-out",
    NAPE: "the slit",
}
"""What is faced in one go with the neck; above a cut-out the nape is part of that."""


def _of_armhole(seam: Seam) -> bool:
    """True for a faced edge of an armhole."""
    return any(r.edge.startswith("armhole") for r in seam.runs())

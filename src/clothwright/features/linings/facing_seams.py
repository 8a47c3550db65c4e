"""What the facings are sewn to (first garment 21, S8 to S13 and S18)."""

from clothwright.curves import Point
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import (
    ABOVE,
    BACK_NOTCH,
    FRONT_NOTCH,
    NAPE,
    TOP,
    Chains,
)
from clothwright.features.linings.facing_pieces import at_zip, beside_zip
from clothwright.features.linings.roll import at_foot
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.necks.halter_rules import HALTER_BAND
from clothwright.features.openings.stand_pieces import BANDED, STAND
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, SeamKind
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM, NOTCH_SET

FACED = Ease(-0.05, -0.15, 0.05)
"""What a rolled edge may be longer than the shell's, cm (14.5)."""


def _neck_end(t: Chains) -> str:
    """Where the front neck ends: a wrap's at the waist, or at a placket."""
    if t.has("F", OVER):
        return "waist"
    if t.has("F", BANDED) or t.has("FC", BANDED):
        return "band"
    return "placket" if t.has("F", "placket") else "centre front"


def _back_end(t: Chains) -> str:
    """Where the back neck ends: a slanted edge at the waist, or at a band."""
    if t.has("BC", "slant"):
        return "waist"
    banded = t.has("B", BANDED) or t.has("BC", BANDED)
    return "band" if banded else "centre back"


def beside_centre(t: Chains, shell: tuple[Run, ...], begin: Point) -> float:
    """How far down the neck a facing beside the centre begins: on the front as it was
    when the facing was traced, before a dart was led into that."""
    if not t.has("F", "neck"):
        return t.upto(shell, begin)
    neck = as_drafted(t.sheet).edge("neck").path
    return neck.length_to(neck.nearest(begin)[0])


def facing_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The seams of FF and BF, as far as they are on the table."""
    out = []
    for code, name, left, right, start, end in (
        (
            "S8",
            "neck, front",
            front_neck(t),
            t.chain(("FF", "neck", False)),
            "shoulder",
            _neck_end(t),
        ),
        (
            "S9",
            "neck and slanted edge" if t.has("BC", "slant") else "neck, back",
            back_neck_chain(t),
            t.chain(("BF", "neck", True), ("BF", "slant", True)),
            "shoulder",
            _back_end(t),
        ),
        (
            "S10",
            "armhole, front",
            front_armhole(t),
            t.chain(("FF", "armhole", True)),
            "tip",
            "underarm",
        ),
        (
            "S11",
            "armhole, back",
            back_armhole(t),
            t.chain(("BF", "armhole", False)),
            "tip",
            "underarm",
        ),
    ):
        if not (left and right):
            continue
        if code == "S9" and t.has("FF", "collar neck"):
            continue  # sewn to the collar that the front facing has in one with it
        ease = FACED
        if (
            code == "S9"
            and t.zipped()
            and not (t.has("BF", NAPE) or t.has("BF", ABOVE))
        ):
            short = _beside_zip(t, left)
            ease = Ease(*(e - short for e in FACED))
        if code == "S8" and t.has("FF", STAND) and not t.has("FF", "shoulder"):
            short = beside_centre(t, left, t.sheet.run_path(right[0]).start)
            ease = Ease.about(-short, 0.1)
        if code == "S8" and t.has("F", OVER):
            short = at_foot(t.sheet.piece("F"), n.rho)
            ease = Ease(*(e - short for e in FACED))
        out.append(
            Seam(
                code,
                name,
                left,
                right,
                start,
                end,
                ease,
                None,
                edge_notches(t, code, left, right),
                SeamKind.FACED,
            )
        )
    for code, name, e, aim, tol, start, end in (
        ("S12", "facing shoulder", "shoulder", 0.0, 0.1, "neck", "tip"),
        ("S13", "facing side", "side", 0.0, 0.05, "underarm", "free edge"),
    ):
        left = t.chain(("F", f"facing {e}", False), ("FF", e, True))
        right = t.chain(("BF", e, False))
        if left and right:
            out.append(Seam(code, name, left, right, start, end, Ease.about(aim, tol)))
    foot = () if t.has("BF", "stand") else t.chain(("BF", "foot", True))
    waist = t.chain(("BC", "waist", True))
    if foot and waist:
        out.append(_foot(t, n, foot, waist))
    return out


def strap_to_band(t: Chains, code: str, inside: str, rho: float) -> list[Seam]:
    """What lies inside the strap of a halter, to the inner band: narrower by both
    rolls."""
    band = t.chain((HALTER_BAND, "strap end", False))
    strap = t.chain((inside, "shoulder", True))
    if not (band and strap):
        return []
    short, aim, most = t.length(strap) - t.length(band), -2 * rho, 0.15 + rho
    what = "facing" if inside == "FF" else "lining"
    name = f"{what} of the strap, to the band"
    ease = Ease(short, aim - most, 0.0)
    return [Seam(code, name, band, strap, "neck", "armhole", ease)]


def back_neck_chain(t: Chains) -> tuple[Run, ...]:
    """The shell's back neck and slanted edge, from the shoulder."""
    return t.chain(
        ("BC", "neck side", True),
        ("BC", "neck", True),
        ("BC", "slant", True),
        ("B", "neck side", True),
        ("B", "neck", True),
    )


def front_neck(t: Chains) -> tuple[Run, ...]:
    """The shell's front neck, from the shoulder."""
    return t.chain(
        ("FC", "neck", False), ("F", "neck side", False), ("F", "neck", False)
    )


def front_armhole(t: Chains) -> tuple[Run, ...]:
    """The shell's front armhole, from the tip."""
    return t.chain(
        ("FC", "armhole", True),
        ("F", "armhole", True),
        ("F", "armhole low", True),
        ("FS", "armhole", True),
    )


def back_armhole(t: Chains) -> tuple[Run, ...]:
    """The shell's back armhole, from the tip."""
    return t.chain(
        ("BC", "armhole", False),
        ("B", "armhole high", False),
        ("B", "armhole", False),
        ("BS", "armhole", False),
    )


def top_edge(t: Chains, *, front: bool) -> tuple[Run, ...]:
    """The shell's top edge, of a strapless bodice, from the centre."""
    codes = ("FC", "F", "FS") if front else ("BC", "B", "BS")
    return t.chain(*((c, TOP, front) for c in codes))


def top_seams(t: Chains) -> list[Seam]:
    """The top edge of a strapless bodice to its facing (S110, S111)."""
    out = []
    for code, words, front in (("S110", "front", True), ("S111", "back", False)):
        shell = top_edge(t, front=front)
        facing = t.chain(("FF" if front else "BF", TOP, front))
        if not (shell and facing):
            continue
        short = _beside_zip(t, shell) if not front and t.zipped() else 0.0
        out.append(
            Seam(
                code,
                f"top edge, {words}",
                shell,
                facing,
                f"centre {words}",
                "side",
                Ease.about(-short, EVEN),
                None,
                _at_panel(t, shell, short, front=front),
                SeamKind.FACED,
            )
        )
    return out


EVEN = 0.15
"""A facing's top edge, laid lower by the roll, may differ so far from the shell's, cm
(6: equal to the neckline, to 0.3 shorter)."""


def _at_panel(
    t: Chains, shell: tuple[Run, ...], short: float, *, front: bool
) -> tuple[NotchPair, ...]:
    """A notch of the facing where the panel seam meets the top edge, or half way."""
    at = t.length(shell[:1]) if len(shell) > 1 else t.length(shell) / 2
    note = JOINT if len(shell) > 1 else ""
    return (NotchPair(at, at - short, 1 if front else 2, note),)


def _beside_zip(t: Chains, neck: tuple[Run, ...]) -> float:
    """What of the shell's back neck lies beside a zip, where the facing has ended."""
    run = neck[0] if neck[0].edge == TOP else neck[-1]
    line = beside_zip(t.sheet.edge(run.piece, "cb").path)
    edge = run.edge if run.edge == TOP else "neck"
    return at_zip(t.sheet.edge(run.piece, edge).path, line)[0]


def _foot(t: Chains, n: Numbers, foot: tuple[Run, ...], waist: tuple[Run, ...]) -> Seam:
    """The foot of the strip, laid on the back's waist from E2, where it begins inside
    by the roll, to where the strip ends, or over the whole (S18)."""
    whole = t.has("BF", "panel")
    free = 0.0 if whole else t.length(waist) - n.sw
    return Seam(
        "S18",
        "facing foot, caught in the waist",
        foot,
        waist,
        "E2",
        "panel",
        Ease.about(n.rho + free, 0.1),
        kind=SeamKind.LAPPED,
    )


def edge_notches(
    t: Chains, code: str, left: tuple[Run, ...], right: tuple[Run, ...]
) -> tuple[NotchPair, ...]:
    """Notches of a faced edge: one front, two back, and the first loop and the middle
    of a slanted edge, all measured from the end where both sides begin (19)."""
    a, c = t.length(left), t.length(right)
    if code == "S10":
        up = _clear(t, (left, right), FRONT_NOTCH, 0.0)
        return (NotchPair(a - up, c - up, 1),)
    if code == "S11":
        up = _clear(t, (left, right), BACK_NOTCH, NOTCH_SET / 2)
        return (NotchPair(a - up, c - up, 2),)
    slant = next((r for r in left if r.edge == "slant"), None)
    if code != "S9" or slant is None:
        return ()
    path = t.sheet.run_path(slant)  # down to the waist, where both sides begin
    marks = {m.name: m.at for m in t.sheet.piece(slant.piece).marks}
    places = [path.length / 2]
    if "loop 1" in marks:
        places.insert(0, path.length_to_point(marks["loop 1"]))
    corner = a - path.length
    return tuple(
        NotchPair(corner + s, c - path.length + s, 2, "loop")
        for s in places
        if s > NOTCH_ROOM
    )


def _clear(
    t: Chains, sides: tuple[tuple[Run, ...], ...], up: float, half: float
) -> float:
    """A place `up` from the end of both sides of a seam, moved so that a set of
    notches, `half` to either side, keeps clear of the joints with other edges (19)."""
    room = NOTCH_ROOM + half
    joints = [t.length(chain[-1:]) for chain in sides if len(chain) > 1]
    if all(abs(up - joint) >= room for joint in joints):
        return up
    return max(joints) + room if up > joints[0] else min(joints) - room

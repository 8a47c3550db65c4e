"""Seams and corners of what hangs on a bodice: a peplum or the skirt of a dress (first
garment 21, S7, S19, S20, and 22)."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from clothwright.features.chains import (
    LAPPED_BEHIND,
    LONG,
    Chains,
    clear_of,
    hanging,
    on_table,
    shares,
)
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.skirts.pocket_drawing import PANEL_BAG, mouth_places
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.features.wholes import below_waist, waist_in_band
from clothwright.paper import Ease, NotchPair, Run, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NOTCH_ROOM, PANEL, SIDE_HEM


def crosses(sheet: Sheet) -> bool:
    """True for a skirt on a bodice whose front crosses."""
    return on_table(sheet, "PF", OVER)


def hanging_side(t: Chains, n: Numbers) -> Seam | None:
    """The side, notched at a zip and at a pocket in it."""
    left = t.chain(("PF", "side", True), ("PFS", "side", True))
    right = t.chain(("PB", "side", False), ("PBS", "side", False))
    if not (left and right):
        return None
    notches = _down(t, left, right, 1) if t.length(left) >= LONG else ()
    z = n.z - below_waist(n) if "z_top" in n else 0.0
    if NOTCH_ROOM < z < t.length(left) - NOTCH_ROOM:
        end = NotchPair(z, z, 2)  # of a zip in the side
        notches = (end, *(k for k in notches if k.left > z + NOTCH_ROOM))
    pocket = mouth_places(t.sheet, n)
    notches = (
        *(NotchPair(s, s, 1) for s in pocket),
        *(k for k in notches if not pocket or k.left > pocket[-1] + NOTCH_ROOM),
    )
    return Seam(
        "S7",
        f"{hanging(t.sheet)} side",
        left,
        right,
        "waist",
        "slit" if t.has("PF", SLIT) else "hem",
        Ease.about(0.0, 0.05),
        notches=notches,
    )


def hanging_panels(t: Chains, n: Numbers) -> Iterator[Seam]:
    """The panel seams of a peplum in panels, or of a skirt in gores."""
    what = hanging(t.sheet)
    for code, name, a, b in (
        ("S19", f"front {what} panel", ("PFC", "panel"), ("PFS", "panel")),
        ("S20", f"back {what} panel", ("PBC", "panel"), ("PBS", "panel")),
    ):
        left = t.chain((*a, code == "S19"))
        right = t.chain((*b, code == "S20"))
        if left and right:
            yield Seam(
                code,
                name,
                left,
                right,
                "waist",
                "hem",
                Ease.about(0.0, 0.05),
                notches=_with_mouth(t, n, left, right)
                if code == "S19"
                else _down(t, left, right, 2),
            )


def _with_mouth(
    t: Chains, n: Numbers, left: tuple[Run, ...], right: tuple[Run, ...]
) -> tuple[NotchPair, ...]:
    """Notches down the front panel seam, and at a pocket in it."""
    pocket = mouth_places(t.sheet, n, PANEL_BAG)
    if not pocket:
        return _down(t, left, right, 1)
    a = t.length(left)
    places = sorted(clear_of([a * s for s in shares(a)], pocket))
    return tuple(NotchPair(s, s, 1) for s in places)


def lining_fuller(sheet: Sheet, more: Mapping[str, float]) -> Sheet:
    """The table with so much more of a hanging lining's waist, cm, going into that of
    the bodice's, by the codes of these seams where they are; less if it is less."""
    known = {s.code: s for s in sheet.seams}
    return sheet.sew(
        *(
            replace(
                known[code],
                ease=Ease(*(e + by for e in known[code].ease)),
                notches=(),
            )
            for code, by in more.items()
            if code in known
        )
    )


def _down(
    t: Chains, left: tuple[Run, ...], right: tuple[Run, ...], ticks: int
) -> tuple[NotchPair, ...]:
    """Notches down a seam from the waist, nearer to the waist than to the hem, so that
    no piece can be sewn in upside down."""
    a, c = t.length(left), t.length(right)
    return tuple(NotchPair(a * s, c * s, ticks) for s in shares(a))


def hanging_joints(sheet: Sheet) -> Iterator[Joint]:
    """Waist and hem run on over the seams, square to the fold and to the back's
    end."""
    start, end = End.START, End.END
    what = hanging(sheet)

    def has(piece: str, *edges: str) -> bool:
        return on_table(sheet, piece, *edges)

    f = "PF" if has("PF", "side") else "PFS"
    b = "PB" if has("PB", "side") else "PBS"
    if has(f, "waist", "hem") and has(b, "waist", "hem"):
        for edge, ends in (("waist", (start, end)), ("hem", (end, start))):
            if edge == "hem" and has(f, SLIT):
                continue
            names = [f"{edge} side" if has(c, f"{edge} side") else edge for c in (f, b)]
            corners = (Corner(f, names[0], ends[0]), Corner(b, names[1], ends[1]))
            band = SIDE_HEM if names == [edge, edge] else PANEL
            yield Joint(f"{what} {edge} over the side", corners, 180.0, band)
    centre = "PF" if has("PF", "cf") else "PFC"
    if has(centre, "cf"):
        for edge, at in (("waist", end), ("hem", start)):
            yield Joint.fold(f"{what} {edge} at the fold", Corner(centre, edge, at))
    back = "PB" if has("PB", "hem") else "PBC"
    lapped = any(has(back, e) for e in LAPPED_BEHIND)
    if has(back, "waist") and not lapped and not waist_in_band(sheet, "back"):
        first = "waist on" if has(back, "waist on") else "waist"
        for edge, at in ((first, start), ("hem", end)):
            if edge == "hem" and has(back, "vent"):
                continue
            name = f"{what} {edge.split()[0]} at the centre back"
            yield Joint.fold(name, Corner(back, edge, at))
    for half, (c, s) in (("front", ("PFC", "PFS")), ("back", ("PBS", "PBC"))):
        if has(c, "panel") and has(s, "panel"):
            for edge, ends in (("waist", (start, end)), ("hem", (end, start))):
                corners = (Corner(c, edge, ends[0]), Corner(s, edge, ends[1]))
                name = f"{what} {edge} over the {half} panel"
                yield Joint(name, corners, 180.0, SIDE_HEM)

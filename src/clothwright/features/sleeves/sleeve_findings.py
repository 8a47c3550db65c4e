"""Checks of a set-in sleeve on its armhole (first garment 17.2, 17.4; blocks B5, B6 and
S9; rule R-i)."""

from collections.abc import Iterator

from clothwright.blocks.sleeve import HIGHEST
from clothwright.curves import Path, Point, from_pair, mirror_in
from clothwright.features.chains import FRONT_NOTCH
from clothwright.features.linings.sewn_halves import sewn_back, sewn_front
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM


def cap_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """Cap against armhole (R-i), and its height (B5)."""
    cap = sum(sheet.chain_length(sheet.seam(code).right) for code in ("S23", "S24"))
    hole = sum(half.length for half in _armholes(sheet))
    if cap < hole - 1e-3:
        yield Finding(
            "R-i",
            Severity.REFUSE,
            f"The cap of {cap:.1f} cm is shorter than the armhole of {hole:.1f} cm.",
            "SL",
            "Give the cap more ease (E), or the upper arm (e).",
            {"cap": cap, "armhole": hole},
        )
    if n.h_share > HIGHEST + 1e-6:
        yield Finding(
            "SL2",
            Severity.WARN,
            f"The cap is {n.h_share:.3f} of the armhole high; up to {HIGHEST:g} hangs "
            "well.",
            "h",
            "The arm is slim for this armhole: give it more ease, or the armhole less "
            "depth.",
            {"h/A": n.h_share},
        )
    elif n.h_share < (least := _lowest(sheet)):
        yield Finding(
            "SL2",
            Severity.WARN,
            f"The cap is {n.h_share:.3f} of the armhole high; under {least:g} it drags "
            "when the arm hangs.",
            "h",
            "The arm is full for this armhole: make that deeper, or accept a looser "
            "look.",
            {"h/A": n.h_share},
        )
    for half, gap, most in _gaps(sheet):
        if gap > most and not _dropped(sheet):
            yield Finding(
                "SL5",
                Severity.NOTE,
                f"Under the arm the {half} of the sleeve lies {gap:.1f} cm off the "
                f"armhole; up to {most:.1f} cm lies close.",
                "SL",
                "More ease of the upper arm brings them together.",
                {"gap": gap},
            )

    off = n.cap_over + n.head_turn  # what a fitting has turned is meant
    if abs(off) > 0.05:
        way = "front" if off > 0 else "back"
        yield Finding(
            "SL6",
            Severity.NOTE,
            f"The shoulder notch lies {abs(off):.1f} cm from the top of the cap "
            f"towards the {way}: front and back armhole differ more than a sleeve "
            "does.",
            "notch",
            "",
            {"over": off},
        )


def _lowest(sheet: Sheet) -> float:
    """Least share of the armhole that a cap is high and hangs well (B5); without the
    ease of a set-in sleeve it is 1 to 2 cm lower, and on a dropped shoulder by most of
    what that is run on (transformations 4)."""
    if _dropped(sheet):
        return 0.10
    raglan = "SLF" in sheet.pieces and sheet.piece("SLF").has("raglan")
    return 0.25 if raglan else 0.28


def _dropped(sheet: Sheet) -> bool:
    """True under a dropped shoulder, where a low cap falls in folds under the arm."""
    return "Te" in sheet.points


def _armholes(sheet: Sheet) -> tuple[Path, Path]:
    """Front and back armhole with the panels sewn, underarm to tip."""
    return sewn_front(sheet).armhole, sewn_back(sheet).armhole.reversed()


def _cap(sheet: Sheet, code: str) -> Path:
    """Half of the cap from the underarm, as far as it lies on one piece."""
    return sheet.run_path(sheet.seam(code).right[-1]).reversed()


def _gaps(sheet: Sheet) -> Iterator[tuple[str, float, float]]:
    """Half, greatest distance of its cap from the armhole over the lower quarter when
    laid underarm to underarm, and what is right, cm (blocks S9, corrections C17)."""
    front, back = _armholes(sheet)
    flip = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
    for half, armhole, cap, most in (
        (
            "front",
            front.moved(flip),
            _cap(sheet, "S23"),
            0.6,
        ),
        ("back", back.moved(flip), _cap(sheet, "S24"), 1.5),
    ):
        laid = armhole.moved(
            from_pair(
                armhole.start,
                armhole.start + armhole.start_direction,
                cap.start,
                cap.start + cap.start_direction,
            )
        )
        quarter = min(armhole.length / 4, cap.length)
        steps = (cap.at_length(quarter * i / 12) for i in range(1, 13))
        yield half, max(laid.nearest(p)[1] for p in steps), most


def notch_findings(sheet: Sheet) -> Iterator[Finding]:
    """The front notch falls on the side panel, clear of the panel seam (17.2)."""
    if "FS" not in sheet.pieces or sheet.piece("FS").has("shoulder"):
        return
    side = sheet.length("FS", "armhole")
    if side < FRONT_NOTCH + NOTCH_ROOM:
        yield Finding(
            "SL3",
            Severity.REFUSE,
            f"The front panel line starts {side:.1f} cm from the underarm, where the "
            "notch of the sleeve lies.",
            "Qf",
            f"Make its share of the armhole another, so that it starts "
            f"{FRONT_NOTCH + NOTCH_ROOM:.1f} cm or more up.",
            {"Qf": side},
        )

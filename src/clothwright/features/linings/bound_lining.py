"""A lining whose edges are caught in the bindings of neck and armholes (transformations
3 and 6): cut as the shell there, net, and basted to it before both are bound."""

from collections.abc import Iterator

from clothwright.features.bodice.front_dart import led_elsewhere
from clothwright.features.chains import (
    ARM_STRIP,
    NECK_STRIP,
    Chains,
)
from clothwright.features.linings.facing_seams import (
    back_armhole,
    back_neck_chain,
    edge_notches,
    front_armhole,
    front_neck,
)
from clothwright.features.linings.lining_darts import closed_front
from clothwright.features.linings.lining_edge import SLACK, lowered_waist
from clothwright.features.linings.lining_pieces import (
    WAISTS,
    lay_closed,
    lay_traced,
    line_arms,
    named_lining,
    with_shell_grain,
)
from clothwright.features.linings.sewn_halves import sewn_back, sewn_front
from clothwright.features.operations import Operation, SeamType, Stitch, Work
from clothwright.paper import Drafting, Ease, Seam, SeamKind, Sheet, own_piece

_NEAR = 0.1
"""A lining's edge may differ by this much from the shell's, cm."""

_CAUGHT = ("LE1", "LE2", "LE3", "LE4")


def to_bound(d: Drafting) -> None:
    """The bodice's pieces as the shell's, the waist lowered; with sleeves, these too,
    and the underarms raised."""
    front, back = sewn_front(d.sheet), sewn_back(d.sheet)
    sleeve = d.sheet.pieces.get("SL")
    codes: list[str] = []
    for half in (front, back):
        for shell in (half.centre, half.flank):
            if shell is None:
                continue
            shell = piece = d.sheet.piece(shell.code)
            if (
                half.front
                and shell.code == front.centre.code
                and led_elsewhere(d.sheet)
            ):
                piece = closed_front(d.sheet, front.centre)
                lay_closed(d, shell, piece)
            lined = named_lining(piece, shell)
            lined = lowered_waist(d.sheet.put(lined), lined.code).piece(lined.code)
            low = any(lined.has(w) for w in WAISTS)
            lay_traced(
                d,
                shell,
                with_shell_grain(lined, shell),
                (("longer at the waist", SLACK),) if low else (),
                "its edges that are bound as the shell's, without an allowance",
            )
            codes.append(lined.code)
    if sleeve is not None:
        line_arms(d, codes, with_shell_grain(named_lining(sleeve, sleeve), sleeve))


def caught_seams(sheet: Sheet) -> Iterator[Seam]:
    """A lining's edges on the shell's, where strips bind both."""
    t = Chains(sheet)
    for code, like, name, strip, shell, start, end in (
        (
            "LE1",
            "S8",
            "front neck",
            NECK_STRIP,
            front_neck(t),
            "shoulder",
            "centre front",
        ),
        (
            "LE2",
            "S9",
            "back neck",
            NECK_STRIP,
            back_neck_chain(t),
            "shoulder",
            "centre back",
        ),
        ("LE3", "S10", "front armhole", ARM_STRIP, front_armhole(t), "tip", "underarm"),
        ("LE4", "S11", "back armhole", ARM_STRIP, back_armhole(t), "tip", "underarm"),
    ):
        lining = t.chain(*((f"L.{r.piece}", r.edge, r.backward) for r in shell))
        if strip not in sheet.pieces or not lining:
            continue
        yield Seam(
            code,
            f"lining to shell, {name}, caught in the binding",
            shell,
            lining,
            start,
            end,
            Ease.about(0.0, _NEAR),
            None,
            edge_notches(t, like, shell, lining),
            SeamKind.LAPPED,
        )


def caught(sheet: Sheet) -> tuple[str, ...]:
    """The codes of these seams on a table."""
    return tuple(
        s.code
        for s in sheet.seams
        if own_piece(s.code) in _CAUGHT and s.kind is SeamKind.LAPPED
    )


def under_binding(sheet: Sheet, strip: str) -> bool:
    """True for a strip that binds a lining with the shell."""
    bound = {
        run[:2]
        for s in sheet.seams
        for run in s.left
        if any(r.piece == strip for r in s.right)
    }
    return any(run[:2] in bound for c in caught(sheet) for run in sheet.seam(c).left)


def baste_lining(sheet: Sheet) -> Iterator[Operation]:
    """The lining basted into the finished shell before the bindings go on."""
    codes = caught(sheet)
    if not codes:
        return
    runs = [r for c in codes for r in sheet.seam(c).left]
    arms = any(r.edge.startswith("armhole") for r in runs)
    neck = any(not r.edge.startswith("armhole") for r in runs)
    edges = " and ".join(("neck",) * neck + ("armholes",) * arms)
    yield Operation(
        Work.BASTE,
        f"Baste the lining to the {edges}",
        (
            "Wrong side on wrong side, edge on edge, seam on seam; the bindings catch "
            "both.",
        ),
        seams=codes,
        stitch=Stitch.LOCK,
        seam_type=SeamType.LAPPED,
    )

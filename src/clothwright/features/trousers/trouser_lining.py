"""Lining of trousers to below the knee, hung from the waist seam (transformations §6;
to the knee common practice)."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import BACK, FRONT, front_of
from clothwright.curves import Path, Point
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.linings.walked import lay_walked
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.features.skirts.skirt_seams import waist_chain
from clothwright.features.skirts.skirt_sewing import lining_operations
from clothwright.features.trousers.shorts import cut_leg, going_down
from clothwright.features.wholes import before_yoke
from clothwright.paper import (
    Drafting,
    Ease,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    meetings,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM
from clothwright.units.fields import Length

_SRC = "transformations §6"

LINED = {FRONT: "L.TF", BACK: "L.TB"}
"""Code of the lining of each half."""

_NAMES = {FRONT: "Front lining", BACK: "Back lining"}

_SHORTER = 2.5
"""The lining ends at least so far above the hem, cm (§6)."""


class TrouserLining(Feature):
    """Lining of trousers."""

    kind: Literal["trouser lining"] = "trouser lining"
    title: ClassVar[str] = "Lining of trousers"
    sentence: ClassVar[str] = "They are [lined] to {below_knee} below the knee."
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, None, ("trouser lining",), {"hem": Role.TURNED})
        for code in LINED.values()
    )
    gives: ClassVar[frozenset[str]] = frozenset({"trouser lining"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "this lining is for trousers; a skirt has a skirt lining",
        "band": "the lining hangs from the seam of a waistband",
    }
    clashes: ClassVar[dict[str, str]] = {
        "shaped band": "the lining is sewn on with a straight waistband"
    }

    below_knee: Annotated[
        Length | None,
        Number(
            "ln_T",
            "ln",
            "lining below the knee",
            "common practice",
            8.0,
            3.0,
            0.0,
            25.0,
            (5.0, 12.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LINING, "the lining", _draft),)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Lining: lay the darts as pleats, folded the other way, and fell its edges "
            "to the opening."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return lining_operations(sheet)


def _draft(d: Drafting) -> None:
    """Trace front and back, and cut both off at one length."""
    n = d.n
    d.part = "trouser lining"
    front, back = (_traced(d.sheet, code) for code in (FRONT, BACK))
    knee = front_of(n).leg.inseam().segments[0].length
    inseam, side = going_down(front, "inseam"), going_down(front, "side")
    long = min(knee + n.ln_T, inseam.length - _SHORTER)
    a = inseam.at_length(long)
    level = Path.line(Point(-500.0, a.y), Point(500.0, a.y))
    fault = "the side ends above the lining's end: make the lining (ln) shorter"
    along = meetings(side, level, fault)[0][0]
    front = cut_leg(front, a, side.at_length(along))
    inseam, side = going_down(back, "inseam"), going_down(back, "side")
    short = n.st * min(1.0, long / knee)
    back = cut_leg(back, inseam.at_length(long - short), side.at_length(along))
    for piece in (front, back):
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            piece.code,
            f"{piece.name.lower()} on the shell's net line",
            amounts=(("long inside the leg", piece.edge("inseam").length),),
            detail="its hem square to both seams",
            over=(before_yoke(d.sheet, piece.code.removeprefix("L.")).outline,),
        )
    lay_walked(d, d.sheet.sew(*_seams(d.sheet, short)))


def _traced(sheet: Sheet, code: str) -> Piece:
    """A half as it was before a pocket was cut from it."""
    return replace(
        before_yoke(sheet, code),
        code=LINED[code],
        name=_NAMES[code],
        lines=(),
        marks=(),
    )


def _seams(sheet: Sheet, short: float) -> list[Seam]:
    """As the shell is sewn, at the waist to the shell, and at a fly to its edge."""
    t = Chains(sheet)
    out = [s for s in (_as_shell(t, k, short) for k in sheet.seams) if s is not None]
    for code, lining in LINED.items():
        shell = waist_chain(t, code, outwards=True)
        right = tuple(r._replace(piece=lining) for r in shell if r.piece != HIP_PIECE)
        out.append(_felled(t, f"{lining}.waist", shell, right, ("centre", "side")))
    if t.has(FRONT, "fly"):
        shell = (Run(FRONT, "fly"),)
        right = (Run(LINED[FRONT], "fly"),)
        out.append(_felled(t, "L.TF.fly", shell, right, ("waist", "end of the fly")))
    return out


def _felled(
    t: Chains,
    code: str,
    shell: tuple[Run, ...],
    right: tuple[Run, ...],
    ends: tuple[str, str],
) -> Seam:
    name = f"{t.sheet.piece(right[0].piece).name.lower()} at the {code.split('.')[-1]}"
    ease = Ease.about(0.0, 0.05)
    return Seam(code, name, shell, right, *ends, ease, kind=SeamKind.LAPPED)


def _as_shell(t: Chains, s: Seam, short: float) -> Seam | None:
    """The lining's seam where the shell's own halves have this one."""
    chains = [
        tuple(
            r._replace(piece=LINED.get(r.piece, ""))
            for r in chain
            if r.piece != HIP_PIECE
        )
        for chain in (s.left, s.right)
    ]
    if not all(chains) or any(not r.piece for c in chains for r in c):
        return None
    left, right = chains
    if any(not t.has(r.piece, r.edge) for r in (*left, *right)):
        return None
    a, c = t.length(left), t.length(right)
    room = min(a, c) - NOTCH_ROOM
    notches = tuple(
        k._replace(note="") for k in s.notches if NOTCH_ROOM < k.left < room
    )
    ease, zone = s.ease, s.zone
    if s.code == "S41":
        ease, zone = Ease.about(-short, 0.1), None
    return replace(
        s,
        code=f"L.{s.code}",
        name=f"lining, {s.name}",
        left=left,
        right=right,
        ease=ease,
        zone=zone,
        notches=notches,
    )

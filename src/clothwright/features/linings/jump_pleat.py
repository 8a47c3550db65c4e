"""The jump pleat at the hem of a lining (transformations §6): the lining is felled to
the turned-up hem of the shell, and falls in a pleat over that seam."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.linings.lining_hems import shorter_by
from clothwright.features.linings.walked import lay_walked
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role, bodice_hem
from clothwright.features.skirts.about import hanging_hem
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    EdgeKind,
    PaperError,
    Run,
    Seam,
    SeamKind,
    Sheet,
)
from clothwright.rules import Numbers
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations §6"

HEMS = {"S152": "front", "S153": "back"}
"""Codes of the lining's seam on the turned-up hem, of each half."""

_CHAINS = {
    "front": (("FC", "FS"), ("F",), ("PFC", "PFS"), ("PF",)),
    "back": (("BC", "BS"), ("B",), ("PBC", "PBS"), ("PB",)),
}
"""Pieces of a half that a hem runs over, from the centre."""

_HELD = 0.7
"""The lining is felled so far below the raw edge of the hem at least, cm (common
practice, no source)."""

_NEAR, _ASLANT = 0.1, 0.25
"""The lining's edge may differ from the shell's hem by the first, cm, and by the second
for each cm that it is shorter: the sides lie aslant there."""


class JumpPleat(Feature):
    """Jump pleat at the lining's hem."""

    kind: Literal["jump pleat"] = "jump pleat"
    title: ClassVar[str] = "Jump pleat of the lining"
    sentence: ClassVar[str] = (
        "The lining is felled to the turned-up hem, with a [jump pleat] of {depth}."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(f"L.{code}", None, ("lining",), {"hem": Role.JOIN})
        for half in _CHAINS.values()
        for codes in half
        for code in codes
    )
    seams: ClassVar[Mapping[str, str]] = {
        code: f"lining felled to the turned-up hem of the {half}, with a jump pleat"
        for code, half in HEMS.items()
    }
    needs: ClassVar[dict[str, str]] = {
        "lining": "a jump pleat is for a lining that reaches the hem of a top or a "
        'dress; add a "lining" (a skirt\'s own lining hangs free)'
    }
    clashes: ClassVar[dict[str, str]] = {
        "pleated hem": "the hem of a pleated skirt opens, and its lining hangs free; "
        "leave the jump pleat off",
        "crossing skirt": "beside fronts that cross the lining hangs free; leave the "
        "jump pleat off",
        "vent": "beside a vent the lining hangs free; leave the jump pleat off, or "
        "give the hem room for a step by its flare in place of the vent",
        "side slit": "beside a slit the lining hangs free; leave the jump pleat off, "
        "or give the hem room for a step by its flare in place of the slit",
        "button stand": "beside the facing of a button stand the lining hangs free; "
        "leave the jump pleat off",
        "open edges": "beside the facing of an edge that opens the lining hangs free; "
        "leave the jump pleat off",
    }

    depth: Annotated[
        Length | None,
        Number(
            "l_jump",
            "jp",
            "depth of the jump pleat of the lining",
            _SRC,
            1.2,
            0.5,
            0.5,
            3.0,
            (1.0, 1.5),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LINING_IN_ONE, "the jump pleat of the lining", _sew),)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"Lining: its lower edge is felled {fmt(_up(n))} above the finished hem, "
            f"and its fold hangs {fmt(n.short)} above that."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        on, alone = (
            ("the facing of the hem", "that")
            if _faced(sheet)
            else ("the turned-up hem", "the hem")
        )
        yield Operation(
            Work.LINING_HEM,
            "Fell the lining to the hem",
            (
                "When it has hung: turn its lower edge in along the net line and lay "
                f"it on {on}, {fmt(_up(n))} above the finished edge, seam on seam; "
                f"fell it to {alone} alone.",
                f"What it is too long falls down over the stitches in a pleat of "
                f"{fmt(n.l_jump)}.",
            ),
            seams=tuple(s.code for s in sheet.seams if s.code in HEMS),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            press="the fold lightly",
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        faced = _faced(sheet)
        deep = min(Role.DEEP_HEM.width(unit) for unit in Unit)
        if faced:
            deep = n.hem_facing
        for half in () if faced else HEMS.values():
            for code in _hemmed(sheet, half):
                piece = sheet.piece(code)
                of = hanging_hem if code.startswith("P") else bodice_hem
                if of(piece, piece.edge("hem")) is Role.DEEP_HEM:
                    continue
                yield Finding(
                    "JP1",
                    Severity.REFUSE,
                    f"The hem of the {piece.name.lower()} is turned up narrow, so that "
                    "no lining can be felled to it.",
                    f"{code}.hem",
                    "Leave the jump pleat (jp) off, so that the lining hangs free, or "
                    "let the hem flare less.",
                )
                return
        if _up(n) > deep - _HELD + 1e-9:
            yield Finding(
                "JP2",
                Severity.REFUSE,
                f"The lining would be felled {_up(n):.1f} cm above the edge, where the "
                f"{'facing of the hem' if faced else 'turned-up hem'}, {deep:.1f} cm "
                "deep, no longer holds it.",
                "jp",
                "Make the jump pleat (jp) less deep, or the lining less short "
                "(shorter).",
                {"up": _up(n), "hem": deep},
            )


def _up(n: Numbers) -> float:
    """How far above the finished edge the lining is felled, cm."""
    return n.short + n.l_jump


def _faced(sheet: Sheet) -> bool:
    """True where the hem is not turned up, but faced."""
    codes = (c for half in HEMS.values() for c in _hemmed(sheet, half))
    return any(sheet.edge(c, "hem").kind is EdgeKind.SEAM for c in codes)


def _hemmed(sheet: Sheet, half: str) -> tuple[str, ...]:
    """The pieces of a half that have a hem with a lining behind it."""
    for codes in _CHAINS[half]:
        lined = all(
            c in sheet.pieces
            and sheet.piece(c).has("hem")
            and f"L.{c}" in sheet.pieces
            and sheet.piece(f"L.{c}").has("hem")
            for c in codes
        )
        if lined:
            return codes
    return ()


def _sew(d: Drafting) -> None:
    """The lining's lower edge is sewn now, to the hem that lies behind it."""
    n = d.n
    if n.l_jump > n.short:
        raise PaperError(
            f"the jump pleat (jp) of {n.l_jump:.1f} cm is deeper than the lining hangs "
            f"above the hem, {n.short:.1f} cm: make it less deep, or the lining "
            "(shorter) shorter"
        )
    d.part = "lining"
    sheet = d.sheet
    for half in HEMS.values():
        for code in _hemmed(sheet, half):
            p = sheet.piece(f"L.{code}")
            hem = replace(p.edge("hem"), kind=EdgeKind.SEAM)
            sheet = sheet.put(p.with_edge(hem))
    seams = tuple(_seams(Chains(sheet), shorter_by(n)))
    if not seams:
        raise PaperError(
            "no lining reaches the hem, so that it has no jump pleat: leave it off"
        )
    says = "the lining's lower edge walked on the hem of the shell"
    lay_walked(d, sheet.sew(*seams), says, "from the centres to the side, seam on seam")


def _seams(t: Chains, short: float) -> Iterator[Seam]:
    """The lining on the turned-up hem of each half, from the centre."""
    for seam, half in HEMS.items():
        back = half == "back"  # whose loop runs the other way
        codes = _hemmed(t.sheet, half)
        if not codes:
            continue
        yield Seam(
            seam,
            f"lining on the hem of the {half}",
            tuple(Run(c, "hem", back) for c in codes),
            tuple(Run(f"L.{c}", "hem", back) for c in codes),
            f"centre {half}",
            "side",
            Ease.about(0.0, _NEAR + _ASLANT * short),
            kind=SeamKind.LAPPED,
        )

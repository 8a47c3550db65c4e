"""Straight skirt of a dress, fitted with darts to the waist seam of its bodice
(blocks C and D6)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import fitted_dress
from clothwright.blocks.fitted_dress import BACK, FITTED, FRONT
from clothwright.blocks.skirt_rules import LEAST, WIDEST
from clothwright.blocks.torso_width import width_at
from clothwright.curves import distance
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.skirts.about import (
    HANGING,
    HANGING_SEAMS,
    ONE_HANGS,
    hem_line,
    hip_lines,
    over_high_hip,
    round_hem,
)
from clothwright.features.skirts.hanging_seams import hanging_joints, hanging_side
from clothwright.features.skirts.peplum_pieces import share_to_panel
from clothwright.features.skirts.peplum_rules import AT_EDGE, called
from clothwright.features.skirts.skirt_zip import seamed_back
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.features.skirts.straight_skirt import StraightSkirt, stride
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_C = StraightSkirt.numbers()


_AT_EDGE = called(AT_EDGE, "skirt")


class FittedDressSkirt(Feature):
    """Straight skirt at the waist seam of a bodice."""

    kind: Literal["straight dress skirt"] = "straight dress skirt"
    title: ClassVar[str] = "Straight skirt of a dress"
    sentence: ClassVar[str] = (
        "From the waist seam hangs a [straight skirt], {length} long, with {hip_ease} "
        "of ease at the hip; its darts meet the bodice's."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (FRONT,), ("hem", "cf"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "Eh": ("PF.side",),
        "HH": ("PF.side",),
        "ease at the waist": ("PF.waist",),
    }
    pieces: ClassVar[tuple[About, ...]] = HANGING
    seams: ClassVar[Mapping[str, str]] = HANGING_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {"skirt", "straight back", "pocket side", "pocket in the side", "plain hem"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist seam": "the skirt of a dress needs a waist seam",
        "centre back zip": "a dress is put on through a zip at its back; add a "
        '"concealed zip"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "skirt": ONE_HANGS,
        "laid waist dart": "a bodice that is gathered at its waist has no dart for the "
        "skirt's to meet; lead the bust dart there as a dart",
    }

    length: Annotated[Length | None, _C["length"]] = None
    hip_ease: Annotated[Length | None, _C["hip_ease"]] = None
    flare: Annotated[Length | None, _C["flare"]] = None
    front_wider: Annotated[
        Length | None,
        Number(
            "hs",
            "hs",
            "front half wider and back half narrower by",
            "blocks C1",
            low=-1.5,
            high=1.5,
        ),
    ] = None
    side_rise: Annotated[Length | None, _C["side_rise"]] = None
    back_drop: Annotated[Length | None, _C["back_drop"]] = None
    front_drop: Annotated[Length | None, _C["front_drop"]] = None
    back_dart: Annotated[Length | None, _C["back_dart"]] = None
    back_dart_side: Annotated[Length | None, _C["back_dart_side"]] = None
    front_dart: Annotated[Length | None, _C["front_dart"]] = None

    def said(self) -> str:
        if self.flare:
            return f"{self.sentence[:-1]}; each side runs out by {{flare}} to the hem."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (_AT_EDGE, FITTED)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BELOW_WAIST, "the skirt", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return (hanging_side(t, n),)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return hanging_joints(sheet)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        hems = finished_edges(sheet, (BACK, FRONT), "hem")
        if not hems:  # faced
            return
        yield Operation(
            Work.HEM,
            "Hem the skirt",
            (
                f"Level it from the floor, {fmt(n.L)} below the waist; neaten it, turn "
                "it up and fell it by hand.",
            ),
            edges=hems,
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            task=Task.HEM,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _girths(n, sheet)
        yield from _darts(sheet)
        opens = any(sheet.piece(BACK).has(e) for e in ("vent", SLIT))
        yield from stride(n, round_hem(sheet, n, (BACK, FRONT)), opens=opens)


def _draft(d: Drafting) -> None:
    front, back = (share_to_panel(d.sheet, half) for half in ("front", "back"))
    fitted_dress.draft(d, front, back)
    seamed_back(d, BACK)


def _girths(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Hip (K1) and high hip (K8) are body and ease."""
    hip = 2 * width_at(sheet, n.WH, (BACK, FRONT))
    if hem_line(BACK) in sheet.lines:  # an A-line is wider there by what it opened
        hip = 2 * hip_lines(sheet, (BACK, FRONT))
    if abs(hip - n.H_S - n.Eh) > 0.1:
        yield Finding(
            "K1",
            Severity.REFUSE,
            f"The hip of the skirt measures {hip:.1f} cm and should be "
            f"{n.H_S + n.Eh:.1f} cm.",
            "Eh",
            "Measure W, H and WH again.",
            {"is": hip, "aim": n.H_S + n.Eh},
        )
    closed = sum(
        sheet.length(c, e.name)
        for c in (BACK, FRONT)
        for e in sheet.piece(c).edges
        if e.name.startswith("waist")
    )
    aim = n.w_SB + n.w_SF
    if abs(closed - aim) > 0.05:
        yield Finding(
            "K2",
            Severity.REFUSE,
            f"The waist of the skirt measures {2 * closed:.1f} cm and the bodice's "
            f"{2 * aim:.1f} cm.",
            "ease at the waist",
            "Measure W and H again.",
            {"is": closed, "aim": aim},
        )
    yield from over_high_hip(2 * width_at(sheet, n.WHH, (BACK, FRONT)) - n.HH)


def _darts(sheet: Sheet) -> Iterable[Finding]:
    """Every dart is 1 cm to 3.8 cm wide (K7)."""
    for code, half in ((BACK, "back"), (FRONT, "front")):
        piece = sheet.piece(code)
        for k in ("", " 2"):
            if not piece.has(f"dart centre{k}"):
                continue
            legs = [piece.edge(f"dart {leg}{k}").path for leg in ("centre", "side")]
            ends = [p for leg in legs for p in (leg.start, leg.end)]
            wide = max(distance(p, q) for p in ends for q in ends if abs(p.y - q.y) < 3)
            if LEAST - 0.15 <= wide <= WIDEST + 0.15:
                continue
            yield Finding(
                "K7",
                Severity.REFUSE if wide > WIDEST + 1.0 else Severity.WARN,
                f"A {half} dart of the skirt is {wide:.1f} cm wide; {LEAST:g} cm to "
                f"{WIDEST:g} cm lie flat.",
                "ease at the waist",
                "Measure W and H again, or give the waist more ease (Ew).",
                {"dart": wide},
            )

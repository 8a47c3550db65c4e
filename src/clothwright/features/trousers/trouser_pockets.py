"""Pockets of trousers: slanting over the hip, or in the side seam (transformations
§9)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, Work, tape_on
from clothwright.features.skirts.about import POCKET_SEAMS
from clothwright.features.skirts.pocket_drawing import (
    BAG,
    HIP_PIECE,
    bag_findings,
    hang_from_side,
    hung,
    in_seam,
    pocket_seams,
    slant,
)
from clothwright.features.trousers.trouser_sewing import pocket_operations
from clothwright.features.wholes import keep_whole
from clothwright.findings import Finding
from clothwright.paper import Drafting, Run, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §9"

_BESIDE_DART = 0.5
"""The bag ends so far beside the nearest dart, cm (our own)."""

_ABOVE_HIP = 1.0
"""A slanting pocket ends so far above the hip line, cm (our own)."""


class Shape(Enum):
    """Where the hand goes in."""

    SLANT = "slanting"
    """From the waist to the side."""

    SEAM = "in the side seam"


POCKETS = RuleTable("pockets of trousers")


@POCKETS.rule(
    "pz",
    "end of the pocket down the side, from the waist",
    source=_SRC,
    key="pk_end",
    formula="17 cm, but ending 1 cm above the hip",
    low=10.0,
    high=26.0,
)
def _end(BRe: float, yh_T: float) -> float:
    return min(17.0, BRe - yh_T - _ABOVE_HIP)


class Pockets(Feature):
    """Two pockets at the sides of trousers."""

    kind: Literal["trouser pockets"] = "trouser pockets"
    title: ClassVar[str] = "Pockets of trousers"
    sentence: ClassVar[str] = "The [pockets] are {shape}, their bags {bag} deep."
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(FRONT, shown=("pockets",)),
        About(HIP_PIECE, Place.POCKET, ("pockets",)),
        About(BAG, Place.POCKET, ("pockets",)),
    )
    seams: ClassVar[Mapping[str, str]] = POCKET_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"pockets"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "these pockets are for trousers"
    }
    clashes: ClassVar[dict[str, str]] = {
        "side zip": "a zip in the left side leaves no pocket there; close with a fly"
    }

    shape: Shape = Shape.SLANT
    across: Annotated[
        Length | None,
        Number(
            "pk_top",
            "pt",
            "slanting pocket on the waist, from the side",
            _SRC,
            6.0,
            2.375,
            2.5,
            10.0,
            (5.0, 7.0),
        ),
    ] = None
    end: Annotated[
        Length | None,
        Number(
            "pk_end",
            "pz",
            "end of the pocket down the side, from the waist",
            _SRC,
            low=10.0,
            high=26.0,
            usual=(15.0, 18.0),
        ),
    ] = None
    begin: Annotated[
        Length | None,
        Number(
            "pk_begin",
            "pb",
            "mouth in the side seam, below the waist",
            _SRC,
            7.0,
            2.75,
            3.0,
            12.0,
            (6.0, 8.0),
        ),
    ] = None
    mouth: Annotated[
        Length | None,
        Number(
            "pk_mouth",
            "pm",
            "length of a mouth in the side seam",
            _SRC,
            16.0,
            6.25,
            12.0,
            20.0,
            (15.0, 17.0),
        ),
    ] = None
    bag: Annotated[
        Length | None,
        Number(
            "pk_deep",
            "pd",
            "depth of the pocket bag, from the waist",
            _SRC,
            28.0,
            11.0,
            20.0,
            40.0,
            (25.0, 30.0),
        ),
    ] = None
    bag_width: Annotated[
        Length | None,
        Number(
            "pk_wide",
            "pw",
            "width of the pocket bag",
            _SRC,
            15.5,
            6.0,
            11.0,
            22.0,
            (15.0, 18.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (POCKETS,)

    def forbids(self) -> Mapping[str, str]:
        if self.shape is Shape.SEAM:
            return self.clashes
        return {
            **self.clashes,
            "cased waist": "a slanting pocket is caught in a waistband; beside a "
            'casing choose shape = "in the side seam"',
        }

    def stages(self) -> tuple[Stage, ...]:
        draw = _slant if self.shape is Shape.SLANT else _in_seam
        return (Stage(Rank.CLOSURE, "the pockets", draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return pocket_seams(t, FRONT)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if HIP_PIECE in sheet.pieces:
            return {BAG: Cuts("2 (1 pair)", 2, ("lining",))}
        return {BAG: Cuts("4 (2 pairs)", 4, ("lining",))}

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return (Run(FRONT, "pocket"),) if self.shape is Shape.SLANT else ()

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        for run in self.taped(sheet):
            tape = sheet.length(run.piece, run.edge)
            yield Notion(Article.TAPE, 2, "for the pocket mouths", length=tape)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is Shape.SLANT:
            yield (
                "Pockets: tape the slanting edge, face it with the bag, lay the hip "
                "piece behind it from notch to notch, and sew the bag before the sides."
            )
        else:
            yield (
                f"Pockets: sew the bags to both side allowances, and the sides above "
                f"and below the mouth of {fmt(n.pk_mouth)} (notches)."
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        for run in self.taped(sheet):
            tape = sheet.length(run.piece, run.edge)
            yield tape_on("pocket mouths", tape, 2, fmt, Work.STAY)
        yield from pocket_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from bag_findings(n, sheet, slant=self.shape is Shape.SLANT)


def _slant(d: Drafting) -> None:
    d.part = "pockets"
    front = d.sheet.piece(FRONT)
    d.sheet = keep_whole(d.sheet, FRONT)
    slant(d, FRONT, front.after("side").path, _top(d), "a slanting pocket")


def _in_seam(d: Drafting) -> None:
    d.part = "pockets"
    if hung(d.n):
        hang_from_side(d, FRONT)
        return
    front = d.sheet.piece(FRONT)
    in_seam(d, FRONT, front.after("side").path, _top(d))


def _top(d: Drafting) -> float:
    """Width of the bag along the waist: beside the dart, at most its whole width."""
    waist = d.sheet.piece(FRONT).after("side").path
    darted = d.n.nf_T > 0
    return min(d.n.pk_wide, waist.length - (_BESIDE_DART if darted else 2.0))

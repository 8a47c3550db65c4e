"""Capelet: a part of a circle whose inner arc is the neck (transformations 5)."""

import math
from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import Sector, radius
from clothwright.blocks.collar import beside
from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.collars.collar import SRC, Collar
from clothwright.features.collars.collar_neck import (
    closed_neck,
    opens_behind,
    papers,
)
from clothwright.features.collars.collar_pieces import COLLAR, grained
from clothwright.features.collars.collar_sewing import single_operations
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, EdgeKind, Piece, Sheet, Taped, Verb
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

CAPELET = RuleTable("capelet")

_MOST = 0.94
"""A whole circle leaves the two ends no width to be sewn or hemmed, of a circle (our
own)."""

_TIPS = "over the tips of the shoulders"
"""Name of the line by which it is seen whether a capelet passes over them."""


@CAPELET.rule(
    "φ cape",
    "angle of half the capelet",
    source=SRC,
    key="phi_cape",
    kind=Kind.ANGLE,
    formula="180°·f",
)
def _angle(f_cape: float) -> float:
    return 180.0 * f_cape


@CAPELET.rule(
    "f cape",
    "share of a full circle of the capelet",
    source="exact maths: what the neck's edge turns from centre to centre",
    key="f_cape",
    kind=Kind.RATIO,
    formula="1 − (σf′ + σb′)/180°, the circle that lies over the shoulders, at most "
    f"{_MOST:g}",
    low=0.2,
    high=_MOST,
)
def _share(sigma_f_new: float, sigma_b_new: float) -> float:
    """Front and back laid together at the shoulder; every line beside the neck is
    longer than it by its turn times the distance."""
    return min(_MOST, 1 - (sigma_f_new + sigma_b_new) / 180.0)


class Capelet(Collar):
    """Capelet from a part of a circle."""

    kind: Literal["capelet"] = "capelet"
    title: ClassVar[str] = "Capelet"
    sentence: ClassVar[str] = (
        "From the neck falls a [capelet], {width} deep, {fullness} of a full circle."
    )
    shows: ClassVar[Shown] = {"f cape": ("CO.hem",), "collar width": ("CO.hem",)}

    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "depth of the capelet from the neck",
            SRC,
            28.0,
            11.0,
            8.0,
            70.0,
            (15.0, 45.0),
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "f_cape",
            "f cape",
            "share of a full circle of the capelet",
            SRC,
            low=0.2,
            high=_MOST,
            usual=(0.25, _MOST),
            kind=Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (CAPELET,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the capelet", _draft),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield Operation(
            Work.COLLAR,
            "Let the capelet hang a day, then level its edge",
            ("What lies on the bias drops: hang it by its neck before it is hemmed.",),
        )
        yield from single_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        neck, over = sheet.length(COLLAR, "neck"), sheet.lines[_TIPS].length
        is_ = neck + math.pi * n.f_cape * n.Lr
        if n.c_wide < n.Lr or is_ >= over - _LEAST:
            return
        needed = math.ceil(100 * (over - neck) / (math.pi * n.Lr)) / 100
        behind = opens_behind(sheet)
        so = "it rides up" if behind else "its front edges stand apart below the neck"
        yield Finding(
            "KC1",
            Severity.WARN if behind else Severity.NOTE,
            f"Over the tips of the shoulders the capelet is {2 * is_:.1f} cm round and "
            f"the bodice {2 * over:.1f} cm: {so}.",
            "f cape",
            f'Take {needed:g} of a circle or more, or a "bertha", which follows the '
            "shoulders.",
            {"capelet": 2 * is_, "bodice": 2 * over, "needed": needed},
        )


_LEAST = 0.5
"""What a half is narrower than the shoulders by less gives, cm (our own)."""


def _draft(d: Drafting) -> None:
    """Half of a ring's part whose inner arc is the trued half neck: r = 2n/(2πf)."""
    n = d.n
    d.part = "collar"
    neck = closed_neck(d.sheet, n.Lr)
    d.under = papers(d.sheet, neck)
    d.draw(
        _TIPS,
        beside(neck.edge(0.0, 0.0), n.Lr, to_centre=True),
        "line over the tips of the shoulders, as far from the neck all round as they "
        "are",
        detail="on front and back laid together at the shoulder; measure it: a capelet "
        "of less than that there does not lie over the shoulders",
    )
    d.under = ()
    inner = radius(2 * neck.length, n.f_cape)
    behind = opens_behind(d.sheet)
    seam, done, fold = EdgeKind.SEAM, EdgeKind.FINISHED, EdgeKind.FOLD
    cf = ("cf", fold) if behind else ("end", done)
    cb = ("end back", done) if behind else ("cb", fold)
    sector = Sector.half(inner, inner + n.c_wide, n.phi_cape, at_right=behind)
    edges = sector.edges(("neck", seam), cf, ("hem", done), cb)
    piece = grained(Piece(COLLAR, "Capelet", edges))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        COLLAR,
        "capelet",
        amounts=(
            ("with an inner arc of radius {}", Taped("r cape", inner)),
            ("as long as the half neck, {}", neck.length),
            ("over an angle of {}", "phi_cape"),
            ("deep", "c_wide"),
        ),
        detail="both arcs from one centre, joined by lines that run to it; the radius "
        "is the whole neck through 2π and the share of a circle",
    )
    d.found(
        "Xs",
        piece.edge("neck").path.at_length(neck.back.length),
        "shoulder on the capelet",
        amounts=(("along from the centre back by {}", neck.back.length),),
    )

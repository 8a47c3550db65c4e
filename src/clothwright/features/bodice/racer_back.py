"""Racer back: armholes cut away from the shoulder beside the neck, the back's far in
over the blades (transformations 3, cut-away).

What is left of the shoulder is a strap. At the back the armhole leaves it leaning
towards the centre, so that it comes down in one even curve to the narrowest place, and
sweeps out from there to the underarm; in front it leaves the shoulder by as much the
other way, so that both run on into each other when the shoulder is sewn.
"""

import math
from collections.abc import Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_back, inward_front
from clothwright.curves import Point, Vector
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage
from clothwright.features.bodice.armhole import (
    cover_findings,
    outline_back,
    outline_front,
)
from clothwright.features.bodice.back_dart import drawn_shoulder
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.paper.drafting import Size
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 3"

_PRACTICE = "common practice, no source"

_LEAST_DROP, _LEAST_IN = 5.0, 0.3
"""The narrowest place lies so far below the end of the shoulder, and so far further in,
at least, cm (our own)."""

_MOST_LEAN = 35.0
"""An armhole that leans more leaves a corner of the shoulder that is hard to sew,
degrees (our own)."""

_STRAP = 6.1
"""A strap begins so wide at least: a boat neck takes half, and a facing finds its room
beside that, cm (our own)."""

RACER = RuleTable("racer back")
_rule = RACER.rule


@_rule(
    "ti",
    "narrowing of the shoulder at the tip",
    source=_PRACTICE,
    formula=f"half the shoulder, of which {_STRAP:g} cm stay",
    low=2.0,
    high=11.0,
)
def ti(SH: float) -> float:
    return max(2.0, min(SH / 2, SH - _STRAP))


@_rule(
    "r level",
    "narrowest place of a racer back, below the nape",
    source=_PRACTICE,
    formula="0.6·yB",
    key="r_level",
    low=6.0,
    high=24.0,
)
def _level(yB: float) -> float:
    return 0.6 * yB


@_rule(
    "r lean",
    "lean of the racer's armholes at the shoulder",
    kind=Kind.ANGLE,
    source="exact maths: a parabola's chord leans half as much as its start",
    formula="atan(2·in/down) − σb′, in and down from the tip to the narrowest place",
    key="r_lean",
)
def _lean(
    bw: float,
    nr: float,
    Sb: float,
    sigma_bs: float,
    sigma_b_new: float,
    r_half: float,
    r_level: float,
) -> float:
    slope = math.radians(sigma_bs)
    x, y = bw + Sb * math.cos(slope), Sb * math.sin(slope) - nr
    if r_level - y < _LEAST_DROP:
        raise RuleError(
            f"the back would be narrowest only {max(0.0, r_level - y):.1f} cm below "
            f"the end of the shoulder; {_LEAST_DROP:g} cm is the least: lay that (r "
            "level) lower"
        )
    if x - r_half < _LEAST_IN:
        raise RuleError(
            f"the shoulder ends {x:.1f} cm from the centre back, and the back is "
            f"{r_half:.1f} cm wide below that: make it (r half) narrower, or narrow "
            "the shoulder (ti) less"
        )
    lean = math.degrees(math.atan2(2 * (x - r_half), r_level - y)) - sigma_b_new
    if lean > _MOST_LEAN:
        raise RuleError(
            f"the armholes would lean by {lean:.0f}° at the shoulder, more than "
            f"{_MOST_LEAN:.0f}°: narrow the shoulder (ti) more, leave the back (r "
            "half) wider, or lay its narrowest place (r level) lower"
        )
    return max(0.0, lean)


class FrontCut(Enum):
    """How the front's armhole goes from the strap to the underarm."""

    COVERED = "kept out"
    """It sweeps out early, to cover as much as it may."""

    CUT = "cut away too"
    """It runs on down from the strap and sweeps out late."""


_PITCH: Mapping[FrontCut, float] = {FrontCut.COVERED: 0.4, FrontCut.CUT: 0.65}
"""Where it is upright: share of the depth from the tip to the underarm (our own trial;
an armhole with its whole shoulder has 0.56, blocks A3.9)."""


class RacerBack(Feature):
    """Armholes of a racer back."""

    kind: Literal["racer back"] = "racer back"
    title: ClassVar[str] = "Racer back"
    sentence: ClassVar[str] = (
        "Sleeveless, with a [racer back]: the shoulder {narrowed} narrower at the tip, "
        "the back {half} wide to each side at its narrowest, {level} below the nape; "
        "in front the armhole is {front}."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("narrowed", ("F", "FC"), ("armhole", "shoulder")),
    )
    shows: ClassVar[Shown] = {
        "r half": ("B.armhole",),
        "r level": ("B.armhole",),
        "r lean": ("B.armhole",),
        "ti": ("FC.armhole", "F.armhole"),
        "ta": ("FC.armhole", "FS.armhole", "F.armhole"),
    }
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset(
        {"armhole", "lined arm", "sleeveless", "racer back"}
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "an armhole is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": "an order has one kind of armhole",
        "back panel seam": "a panel line would start in the armhole beside the centre "
        "back; take a back waist dart in place of the princess line",
        "led back dart": "armhole and shoulder of a racer lie beside the centre back, "
        'where no dart ends; leave the back waist dart at the waist, to = "waist"',
        "back neck dart": "the shoulder dart has no room in a racer's strap; set "
        'back_shoulder = "ease"',
        "open back": "a low open back leaves no paper for a racer; leave one of the "
        "two off",
        "cut-out back": "a racer leaves no paper for a cut-out; leave one of the two "
        "off",
        "back yoke": "a yoke's seam would end in the racer's armhole beside the centre "
        "back; leave one of the two off",
    }

    narrowed: Annotated[
        Length | None,
        Number(
            "ti",
            "ti",
            "narrowing of the shoulder at the tip",
            _PRACTICE,
            low=2.0,
            high=11.0,
        ),
    ] = None
    half: Annotated[
        Length | None,
        Number(
            "r_half",
            "r half",
            "half of a racer back at its narrowest",
            _PRACTICE,
            8.0,
            3.0,
            3.0,
            16.0,
            (5.0, 11.0),
        ),
    ] = None
    level: Annotated[
        Length | None,
        Number(
            "r_level",
            "r level",
            "narrowest place of a racer back, below the nape",
            _PRACTICE,
            low=6.0,
            high=24.0,
        ),
    ] = None
    front: FrontCut = FrontCut.COVERED
    tightened: Annotated[
        Length | None,
        Number(
            "ta",
            "ta",
            "tightening of the front armhole",
            "transformations 1.8",
            1.0,
            0.375,
            0.0,
            2.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, RACER)

    def stages(self) -> tuple[Stage, ...]:
        return (SHOULDER_STAGE, Stage(Rank.ARMHOLE, "necks and armholes", self._draw))

    def _draw(self, d: Drafting) -> None:
        """Draw both armholes from the ends of the straps."""
        _front(d, self.front)
        _back(d)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return cover_findings(
            n, sheet, "ti", "Narrow the shoulder (ti) less, or take a deeper cup."
        )


def _front(d: Drafting, cut: FrontCut) -> None:
    n = d.n
    d.part = "front"
    tip, inward = d["Tf"], inward_front(n.sigma_f_new - n.r_lean)
    drop = _PITCH[cut] * (d["G"].y - tip.y)
    out = drop * math.tan(math.radians(n.r_lean - n.sigma_f_new)) / 2
    pf = _pitch(d, "pf", "Tf", tip + Vector(-out, drop), n.X - tip.x + out)
    outline_front(d, inward, pf, _HOW)


def _back(d: Drafting) -> None:
    n = d.n
    d.part = "back"
    shoulder = drawn_shoulder(d)
    if len(shoulder.edges) > 1:
        raise PaperError(
            "a shoulder dart has no room in a racer's strap: set back_shoulder = "
            '"ease"'
        )
    pb = _pitch(d, "pb", "Tb", Point(n.r_half, n.r_level), "r_half")
    outline_back(d, shoulder, inward_back(n.sigma_b_new + n.r_lean), pb, _HOW)


_HOW = "in one even curve from the shoulder, upright at the pitch"


def _pitch(d: Drafting, name: str, tip: str, at: Point, across: Size) -> Point:
    half = "front" if name == "pf" else "back"
    return d.found(
        name,
        at,
        f"{half} pitch point",
        amounts=(
            (f"from the centre {half} line", across),
            (f"down from {tip}", at.y - d[tip].y),
        ),
        detail="where the armhole is upright",
    )

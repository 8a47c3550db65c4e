"""The sleeve of a knit bodice: one symmetrical cap with hardly any ease (blocks F5)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.knit_rules import BY_STRETCH, by_stretch
from clothwright.blocks.sleeve import PLAIN, HalfShape, half_cap
from clothwright.blocks.sleeve_lower import ELBOW, arm_girth
from clothwright.blocks.trial import by_trial
from clothwright.curves import Path, Point, mirror_in, mix
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_findings import sleeve_findings
from clothwright.features.knits.knit_seams import knit_sleeve_seams
from clothwright.features.knits.knit_sewing import sleeve_operations
from clothwright.features.operations import Operation
from clothwright.features.sleeves.sleeve_joints import sleeve_joints
from clothwright.features.sleeves.sleeve_lengths import LENGTH, REACH, Reach
from clothwright.features.sleeves.sleeve_pieces import square_to_both
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Seam,
    Sheet,
    Verb,
)
from clothwright.rules import Given, Kind, Numbers, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "blocks F5"

SLEEVE = "KS"
"""Code of the piece."""

SHAPE = HalfShape(0.45, 0.39, 0.40)
"""Each half of the cap: between the front and the back of the fitted sleeve (B3)."""

ROOM = 1.0
"""The hem is so much wider than the arm on the cloth, cm (our own)."""

KNIT_SLEEVE = RuleTable("knit sleeve")
_rule = KNIT_SLEEVE.rule

_LH_USUAL = Number(
    "lh_usual", "lh usual", "usual length of a short sleeve", "first garment 17", 18, 7
)


@_rule(
    "pa",
    "ease of the upper arm, per cent",
    kind=Kind.RATIO,
    source="measures 8.1",
    key="p_arm",
    formula=BY_STRETCH,
    low=-15.0,
    high=40.0,
)
def _arm(s_knit: float, recovery: float) -> float:
    return by_stretch("arm", s_knit, recovery)


@_rule("Wb", "biceps width of the sleeve", source=_SRC, formula="UA·(1 + pa)")
def Wb(UA: float, p_arm: float) -> float:
    return UA * (1 + p_arm / 100)


@_rule(
    "h",
    "height of the cap",
    source=_SRC,
    key="h_cap",
    formula="found so that the cap is as long as the armhole and E",
    low=2.0,
    high=25.0,
)
def _height(Wb: float, A_hole: float, E_cap: float) -> float:
    half, width = (A_hole + E_cap) / 2, Wb / 2
    height = None
    if half > width:
        height = by_trial(
            lambda h: half_cap(width, h, SHAPE).length - half,
            0.8 * (half - width),
            (half**2 - width**2) ** 0.5,
        )
    if height is None:
        raise RuleError(
            f"no cap for a sleeve {Wb:.1f} cm wide fits an armhole of {A_hole:.1f} cm: "
            "measure the upper arm (UA) again, deepen the armhole, or take less ease "
            "at the arm"
        )
    return height


@_rule(
    "h/A",
    "height of the cap, share of the armhole",
    kind=Kind.RATIO,
    source=_SRC,
    key="h_share",
    formula="h/A",
)
def _share(h_cap: float, A_hole: float) -> float:
    return h_cap / A_hole


@_rule(
    "cap back",
    "back of the cap, underarm to shoulder notch",
    source=_SRC,
    key="cap_back",
    formula="Ab + E/2",
)
def _cap_back(A_b: float, E_cap: float) -> float:
    return A_b + E_cap / 2


@_rule(
    "hem width",
    "hem of the sleeve",
    source="our own",
    key="hem_sleeve",
    formula="the arm there·(1 + pa) and 1 cm, at most Wb; below the elbow at least so "
    "wide that the hand passes at half of the stretch",
    low=10.0,
    high=70.0,
)
def _hem(
    under_arm: float,
    y_E: float,
    UA: float,
    EL: float,
    WR: float,
    HD: float,
    AL: float,
    h_cap: float,
    p_arm: float,
    s_knit: float,
    Wb: float,
) -> float:
    if under_arm <= y_E:
        girth = arm_girth(under_arm, y_E, UA, EL)
        return min(Wb, girth * (1 + p_arm / 100) + ROOM)
    down = clip((under_arm - y_E) / (AL - h_cap - y_E), 0.0, 1.0)
    girth = EL + (WR - EL) * down
    passes = HD / (1 + 0.5 * s_knit / 100)
    return min(Wb, max(girth * (1 + p_arm / 100) + ROOM, passes))


class KnitSleeve(Feature):
    """Sleeve of a knit bodice, set in flat before the sides are sewn."""

    kind: Literal["knit sleeve"] = "knit sleeve"
    title: ClassVar[str] = "Knit sleeve"
    sentence: ClassVar[str] = (
        "Knit [sleeves], {length} long, with {arm} per cent of ease at the upper arm "
        "and {hem} wide at the hem; the cap is eased in by {cap_ease}."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (SLEEVE,), ("underarm front", "hem"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "lh": (f"{SLEEVE}.hem",),
        "h": (f"{SLEEVE}.cap back",),
        "E": (f"{SLEEVE}.cap back",),
        "pa": (f"{SLEEVE}.underarm front",),
    }
    pieces: ClassVar[tuple[About, ...]] = (knitted(SLEEVE, "sleeve"),)
    seams: ClassVar[Mapping[str, str]] = {
        "S93": "knit sleeve to the front armhole",
        "S94": "knit sleeve to the back armhole",
        "S95": "seam under the arm of a knit sleeve",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"knit armhole", "knit sleeve"})
    needs: ClassVar[dict[str, str]] = {
        "knit bodice": 'a knit sleeve hangs in a "knit bodice"; a woven bodice takes a '
        '"set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "knit armhole": "an armhole takes a sleeve or a band, not both"
    }

    reach: Reach = Reach.SHORT
    """How far it reaches, unless a length is given."""

    length: Annotated[
        Length | None,
        Number(
            "lh",
            "lh",
            "length of the sleeve from the top of the cap",
            "first garment 17.3",
            low=10.0,
            high=80.0,
        ),
    ] = None
    arm: Annotated[
        Ratio | None,
        Number(
            "p_arm",
            "pa",
            "ease of the upper arm, per cent",
            "measures 8.1",
            low=-15.0,
            high=40.0,
            kind=Kind.RATIO,
        ),
    ] = None
    hem: Annotated[
        Length | None,
        Number(
            "hem_sleeve",
            "hem width",
            "hem of the sleeve",
            "our own",
            low=10.0,
            high=70.0,
        ),
    ] = None
    cap_ease: Annotated[
        Length | None,
        Number(
            "E_cap",
            "E",
            "ease of the cap over the armhole",
            _SRC,
            0.3,
            0.125,
            0.0,
            1.5,
            (0.0, 0.6),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (PLAIN, KNIT_SLEEVE, ELBOW, LENGTH, REACH[self.reach])

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield _LH_USUAL.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE, "the knit sleeve", draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return knit_sleeve_seams(t, n, SLEEVE)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return sleeve_joints(sheet, SLEEVE)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return sleeve_operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return sleeve_findings(n)


def draft(d: Drafting) -> None:
    """Draft the sleeve (KS): the cap, the seam under the arm, the hem."""
    n = d.n
    d.part = "sleeve"
    d.start("Os", Point(0.0, 0.0), "the centre of the sleeve, on its biceps line")
    top = d.point("T", "Os", "top of the cap", up="h_cap")
    uf = d.point("Sf", "Os", "front underarm of the sleeve", right=n.Wb / 2)
    ub = d.point("Sb", "Os", "back underarm of the sleeve", left=n.Wb / 2)
    for name, at, side in (("Vf", uf, "front"), ("Vb", ub, "back")):
        d.found(
            name,
            mix(at, top, SHAPE.bend),
            f"where the {side} of the cap turns from hollow to crown",
            detail=f"45 in 100 of the way from S{side[0]} to T",
        )
    right = half_cap(n.Wb / 2, n.h_cap, SHAPE)
    left = right.moved(mirror_in(d["Os"], top))
    cap = d.draw(
        "cap",
        left + right.reversed(),
        "cap of the sleeve",
        frm=("Sb", "Vb", "T", "Vf", "Sf"),
        detail="both halves alike: level at Sb, T and Sf, and at Vb and Vf 22° steeper "
        "than the lines from T to Sb and Sf",
    )
    d.found(
        "K",
        cap.at_length(n.cap_back),
        "where the shoulder seam meets the cap",
        amounts=(("along the cap from Sb", "cap_back"),),
    )
    half = n.hem_sleeve / 2
    hf = d.point("Jf", "Os", "front end of the hem", right=half, down="under_arm")
    hb = d.point("Jb", "Os", "back end of the hem", left=half, down="under_arm")
    seams = []
    for side, at, end in (("front", uf, hf), ("back", ub, hb)):
        seams.append(
            d.draw(
                f"seam {side}",
                square_to_both(at, end),
                f"{side} seam under the arm",
                frm=(f"S{side[0]}", f"J{side[0]}"),
                detail="plumb at both ends",
            )
        )
    cap_back, cap_front = cap.split_at_length(n.cap_back)
    piece = Piece(
        SLEEVE,
        "Sleeve",
        (
            Edge("cap back", cap_back),
            Edge("cap front", cap_front),
            Edge("underarm front", seams[0]),
            Edge("hem", Path.line(hf, hb), EdgeKind.FINISHED),
            Edge("underarm back", seams[1].reversed()),
        ),
        lines=(InnerLine("biceps line", Path.line(ub, uf)),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        SLEEVE,
        "sleeve",
        detail="from the cap, both seams and the hem, its grain plumb from T",
    )

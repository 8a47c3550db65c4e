"""The straight skirt block as the first feature of a skirt, with its ease."""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import skirt
from clothwright.blocks.skirt_curves import Half, Plan
from clothwright.blocks.skirt_darts import SKIRT_DARTS, width_at
from clothwright.blocks.skirt_rules import LEAST, SKIRT, WIDEST
from clothwright.features.about import About
from clothwright.features.base import (
    ONE_BLOCK,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
    before_fitting,
)
from clothwright.features.chains import Chains
from clothwright.features.skirts.about import (
    HALVES,
    SEAMS,
    closed_dart,
    hip_lines,
    round_hem,
)
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.features.skirts.skirt_joints import skirt_joints
from clothwright.features.skirts.skirt_seams import skirt_seams
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.findings import Finding, Severity
from clothwright.paper import UNDER, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "blocks C"

KNEE_HEM, ANKLE_HEM, HOBBLE = 95.0, 120.0, 80.0
"""Least hem of a skirt to walk in at the knee and at the ankle, and below which no step
is left, cm (measures §9)."""

ANKLE = 10.0
"""The ankle lies so far above the floor, cm (common practice)."""

ABOVE_KNEE = 8.0
"""A hem so far above the knee hinders no step, cm (common practice)."""


class StraightSkirt(Feature):
    """Straight skirt block: ease, length, taper or flare."""

    kind: Literal["straight skirt"] = "straight skirt"
    title: ClassVar[str] = "Straight skirt"
    sentence: ClassVar[str] = (
        "A [straight skirt], {length} long from the waist, with {hip_ease} of ease at "
        "the hip and {waist_ease} at the waist."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("SF",), ("hem", "cf"), (0.0, 1.0)),
    )
    pieces: ClassVar[tuple[About, ...]] = HALVES
    seams: ClassVar[Mapping[str, str]] = SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {
            "block",
            "skirt block",
            "fitted skirt",
            "plain hem",
            "shaped skirt",
            "waist",
            "shaped top",
            "straight back",
            "pocket side",
            "pocket in the side",
        }
    )
    clashes: ClassVar[dict[str, str]] = ONE_BLOCK
    makes_up: ClassVar[dict[str, str]] = {
        "skirt opening": "a fitted skirt must open to be put on; add a feature "
        'kind = "skirt zip"',
        "waist finish": "the waist of the skirt is not finished; add a feature "
        'kind = "waistband"',
    }

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            f"{_SRC}1",
            60.0,
            24.0,
            30.0,
            125.0,
            (40.0, 110.0),
        ),
    ] = None
    hip_ease: Annotated[
        Length | None,
        Number("Eh", "Eh", "ease at the hip", _SRC, 4.0, 1.5, 0.0, 16.0, (3.0, 8.0)),
    ] = None
    waist_ease: Annotated[
        Length | None,
        Number(
            "Ew", "Ew", "ease at the waist", f"{_SRC}2", 2.0, 0.75, 0.0, 8.0, (0.5, 3.0)
        ),
    ] = None
    flare: Annotated[
        Length | None,
        Number(
            "fl_S",
            "fl",
            "out at the hem, each side (below nought it is tapered)",
            f"{_SRC}5",
            0.0,
            0.0,
            -4.0,
            12.0,
            (-2.5, 6.0),
        ),
    ] = None
    front_wider: Annotated[
        Length | None,
        Number(
            "hs",
            "hs",
            "front half wider and back half narrower by",
            f"{_SRC}1",
            0.25,
            0.125,
            -0.75,
            1.5,
            (-0.5, 1.0),
        ),
    ] = None
    side_rise: Annotated[
        Length | None,
        Number(
            "r_S",
            "r S",
            "rise of the side waist",
            f"{_SRC}4",
            1.2,
            0.5,
            0.3,
            2.5,
            (0.6, 1.5),
        ),
    ] = None
    back_drop: Annotated[
        Length | None,
        Number(
            "db_S",
            "db",
            "drop of the waist at the centre back",
            f"{_SRC}4",
            1.0,
            0.375,
            0.0,
            3.0,
            (0.0, 2.0),
        ),
    ] = None
    front_drop: Annotated[
        Length | None,
        Number(
            "df_S",
            "df",
            "drop of the waist at the centre front",
            f"{_SRC}4",
            0.0,
            0.0,
            0.0,
            2.0,
            (0.0, 0.5),
        ),
    ] = None
    back_dart: Annotated[
        Length | None,
        Number(
            "lb_in",
            "lb in",
            "length of the back dart nearer to the centre",
            f"{_SRC}8",
            low=6.0,
            high=18.0,
            usual=(10.0, 15.0),
        ),
    ] = None
    back_dart_side: Annotated[
        Length | None,
        Number(
            "lb_out",
            "lb out",
            "length of the back dart nearer to the side",
            f"{_SRC}8",
            low=6.0,
            high=18.0,
            usual=(9.0, 14.0),
        ),
    ] = None
    front_dart: Annotated[
        Length | None,
        Number(
            "lf",
            "lf",
            "length of the front darts",
            f"{_SRC}8",
            low=5.0,
            high=16.0,
            usual=(7.5, 11.0),
        ),
    ] = None

    def said(self) -> str:
        if self.flare:
            return f"{self.sentence[:-1]}; each side runs out by {{flare}} to the hem."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (SKIRT, SKIRT_DARTS)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the skirt block", before_fitting(skirt.draft)),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return skirt_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return skirt_joints(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _girths(n, sheet)
        yield from _darts(n, sheet)
        yield from _over_high_hip(n)
        yield from stride(
            n, round_hem(sheet, n, _HALVES), opens=bool(_OPENS & _edges(sheet))
        )


_HALVES = (skirt.BACK, skirt.FRONT)

_TOPS = (HIP_PIECE, "SYF", "SYB")
"""Pieces that have a part of the waist, or all: behind a slanting pocket, yokes."""

_OPENS = {"vent", SLIT, f"{UNDER} 1", "front edge"}
"""Edges of a skirt that opens at the hem for a step: of a vent, a slit, a pleat, a
wrap."""


def _edges(sheet: Sheet) -> set[str]:
    return {e.name for c in (skirt.BACK, skirt.FRONT) for e in sheet.piece(c).edges}


def _girths(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The hip is body and ease (K1), and so is the waist (K2)."""
    hip = hip_lines(sheet, _HALVES)
    tops: tuple[str, ...] = (skirt.BACK, skirt.FRONT, *_TOPS)
    if "WCF" in sheet.pieces:  # a shaped band is the top of the skirt
        tops = ("WCB", "WCF")
    waists = [
        e.length
        for code in tops
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.name in skirt.waist_names(2)
    ]
    altered = n.half_S - n.unfitted.half_S  # at a fitting
    for code, place, is_, aim, symbol in (
        ("K1", "hip", hip, (n.H_S + n.Eh) / 2 + altered, "Eh"),
        ("K2", "waist", sum(waists), (n.W + n.Ew) / 2, "Ew"),
    ):
        if abs(is_ - aim) > 0.05:
            yield Finding(
                code,
                Severity.REFUSE,
                f"The {place} of the skirt measures {2 * is_:.1f} cm and should be "
                f"{2 * aim:.1f} cm.",
                symbol,
                "Measure W, H and WH again.",
                {"is": is_, "aim": aim},
            )


def _darts(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Every dart that is sewn is 1 cm to 3.8 cm wide (K7, C8)."""
    for half, code, plan in (
        ("back", skirt.BACK, skirt.back_darts(n)),
        ("front", skirt.FRONT, skirt.front_darts(n)),
    ):
        widths = [
            wide
            for k, wide in zip(("", " 2"), plan.widths, strict=False)
            if closed_dart(code, k) not in sheet.lines
        ]
        widest = max(widths, default=0.0)
        if widest > WIDEST + 0.15:
            yield Finding(
                "K7",
                Severity.REFUSE if widest > WIDEST + 1.0 else Severity.WARN,
                f"A {half} dart of the skirt is {widest:.1f} cm wide; {WIDEST:g} cm is "
                "the most that lies flat.",
                "ease at the waist",
                "Measure W and H again, or give the waist more ease (Ew).",
                {"dart": widest},
            )
        if widths and min(widths) < LEAST - 0.15:
            yield Finding(
                "K7",
                Severity.WARN,
                f"A {half} dart of the skirt is only {min(widths):.1f} cm wide.",
                "ease at the waist",
                "Ease it in, or leave it to the side seam.",
                {"dart": min(widths)},
            )
    if n.a_S < -3.0:
        yield Finding(
            "K3",
            Severity.WARN,
            f"The side runs outwards by {-n.a_S:.1f} cm from the hip to the waist: the "
            "waist is fuller than the hip.",
            "a S",
            "Measure W and H again.",
            {"a": n.a_S},
        )


def _over_high_hip(n: Numbers) -> Iterable[Finding]:
    """Room over the high hip (C9, K8)."""
    room = high_hip(n) - n.HH
    if 1.0 <= room <= 8.0:
        return
    if room < 1.0:
        tight = (
            f"is {-room:.1f} cm less than" if room < 0 else f"leaves {room:.1f} cm over"
        )
        yield Finding(
            "K8",
            Severity.REFUSE if room < -2.0 else Severity.WARN,
            f"Over the high hip the skirt {tight} the body (HH).",
            "HH",
            "Measure HH and WHH again, or give the hip more ease (Eh).",
            {"room": room},
        )
        return
    yield Finding(
        "K8",
        Severity.NOTE,
        f"Over the high hip the skirt has {room:.1f} cm of room.",
        "HH",
        "Pin the side hollower at the fitting if it stands away.",
        {"room": room},
    )


def high_hip(n: Numbers) -> float:
    """The skirt round the high hip with its darts closed, cm (C9)."""
    parts: tuple[tuple[Half, Plan], ...] = (
        (skirt.back_half(n), skirt.back_darts(n)),
        (skirt.front_half(n), skirt.front_darts(n)),
    )
    return 2 * sum(width_at(half, plan, n.WHH) for half, plan in parts)


_VENT = 'Add a feature kind = "vent", or flare the side (its "flare").'


def stride(
    n: Numbers, hem: float, *, opens: bool, cure: str = _VENT
) -> Iterable[Finding]:
    """Whether she can walk in it (measures §9)."""
    down = n.L - n.WK
    if opens or down < -ABOVE_KNEE:
        return
    to_ankle = max(n.WF - ANKLE - n.WK, 1.0)
    wanted = KNEE_HEM + (ANKLE_HEM - KNEE_HEM) * min(1.0, max(0.0, down / to_ankle))
    if hem >= wanted:
        return
    yield Finding(
        "stride",
        Severity.WARN,
        f"The hem is {hem:.1f} cm round and has no vent: {wanted:.0f} cm is wanted for "
        "a step at this length"
        + (f", and under {HOBBLE:.0f} cm it hobbles." if hem < HOBBLE else "."),
        "L",
        cure,
        {"hem": hem, "wanted": wanted},
    )

"""A skirt cut from a circle: full, three-quarter, half, quarter, or by the wanted hem
(blocks G1 to G7)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import circle
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path, Point
from clothwright.features.about import About
from clothwright.features.base import (
    ONE_BLOCK,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
)
from clothwright.features.chains import Chains
from clothwright.features.cloth import widest_of
from clothwright.features.operations import Operation
from clothwright.features.skirts.about import HALVES, SEAMS
from clothwright.features.skirts.contour_flared import above
from clothwright.features.skirts.skirt_joints import skirt_joints
from clothwright.features.skirts.skirt_seams import skirt_seams
from clothwright.features.skirts.skirt_sewing import hanging_operation
from clothwright.features.skirts.straight_skirt import StraightSkirt, stride
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, EdgeKind, Piece, Seam, Sheet, Verb
from clothwright.rules import Given, Kind, Numbers, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "blocks G"

HIP_ROOM = 2.0
"""Least room of a flared skirt over the hip, all round, cm (first garment 13.5)."""

MOST_HALF = 170.0
"""A half front of more degrees leaves no room for its side beside the fold."""

ROUND_WAIST = RuleTable("waist of a skirt without darts")


@ROUND_WAIST.rule(
    "wSF",
    "front waist of the skirt, half",
    source=f"{_SRC}1",
    key="w_SF",
    formula="(W + Ew)/4",
)
def _w_front(W: float, Ew: float) -> float:
    return (W + Ew) / 4


@ROUND_WAIST.rule(
    "wSB",
    "back waist of the skirt, half",
    source=f"{_SRC}1",
    key="w_SB",
    formula="(W + Ew)/4",
)
def _w_back(W: float, Ew: float) -> float:
    return (W + Ew) / 4


@ROUND_WAIST.rule(
    "net SF",
    "front part of a band, half",
    source=f"{_SRC}1",
    key="net_SF",
    formula="wSF",
)
def _net_front(w_SF: float) -> float:
    return w_SF


@ROUND_WAIST.rule(
    "net SB",
    "back part of a band, half",
    source=f"{_SRC}1",
    key="net_SB",
    formula="wSB",
)
def _net_back(w_SB: float) -> float:
    return w_SB


CIRCLE = RuleTable("skirt from a circle")
BY_HEM = RuleTable("share of the circle by the wanted hem")
_rule = CIRCLE.rule


@BY_HEM.rule(
    "f",
    "share of a full circle",
    source=f"{_SRC}3",
    kind=Kind.RATIO,
    formula="(M − W − Ew)/(2πL)",
)
def f(M: float, W: float, Ew: float, L: float) -> float:
    share = circle.share_for_hem(W + Ew, M, L)
    if not 0.05 <= share <= 1.75:
        raise RuleError(
            f"a hem (M) of {M:.0f} cm takes {share:.2f} of a circle; 0.05 to 1.75 can "
            "be cut: choose another hem, or another length (L)"
        )
    return share


@_rule(
    "by",
    "bias yield of the waist, all round",
    source=f"{_SRC}5",
    key="by_S",
    formula="by full·f",
)
def _yield(by_full: float, f: float) -> float:
    return by_full * f


@_rule(
    "wc",
    "waist of the skirt as cut, all round",
    source=f"{_SRC}5",
    key="wc_S",
    formula="W + Ew − by",
)
def _as_cut(W: float, Ew: float, by_S: float) -> float:
    return W + Ew - by_S


@_rule(
    "r",
    "radius of the waist arc",
    source=f"{_SRC}1",
    key="r_circle",
    formula="wc/(2πf)",
)
def _radius(wc_S: float, f: float) -> float:
    r = circle.radius(wc_S, f)
    if r < 2.0:
        raise RuleError(
            f"the waist arc has a radius of only {r:.1f} cm: choose a smaller share of "
            "a circle (f)"
        )
    return r


@_rule(
    "r + L", "radius of the hem arc", source=f"{_SRC}1", key="r_hem", formula="r + L"
)
def _r_hem(r_circle: float, L: float) -> float:
    return r_circle + L


@_rule(
    "hem S",
    "hem of the skirt, all round",
    source=f"{_SRC}2",
    key="hem_S",
    formula="wc + 2πf·L",
)
def _hem(wc_S: float, f: float, L: float) -> float:
    return circle.hem(wc_S, f, L)


@_rule(
    "φ",
    "angle of each half of front and back",
    kind=Kind.ANGLE,
    source=f"{_SRC}1",
    key="phi_S",
    formula="90°·f",
)
def _angle(f: float) -> float:
    return 90.0 * f


class CircleSkirt(Feature):
    """Skirt from a segment of a circle."""

    kind: Literal["circle skirt"] = "circle skirt"
    title: ClassVar[str] = "Circle skirt"
    sentence: ClassVar[str] = (
        "A skirt of {fullness} of a full [circle], {length} long from the waist, with "
        "{waist_ease} of ease at the waist."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("SF",), ("hem", "cf"), (0.0, 1.0)),
    )
    pieces: ClassVar[tuple[About, ...]] = HALVES
    seams: ClassVar[Mapping[str, str]] = SEAMS
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "skirt block", "waist", "shaped top", "plain hem"}
    )
    clashes: ClassVar[dict[str, str]] = ONE_BLOCK
    makes_up: ClassVar[dict[str, str]] = StraightSkirt.makes_up

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            f"{_SRC}1",
            60.0,
            24.0,
            20.0,
            125.0,
            (35.0, 110.0),
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "f",
            "f",
            "share of a full circle",
            f"{_SRC}1",
            0.5,
            None,
            0.1,
            1.75,
            (0.25, 1.0),
            Kind.RATIO,
        ),
    ] = None
    hem: Annotated[
        Length | None,
        Number("M", "M", "wanted hem, all round", f"{_SRC}3", low=90.0, high=1500.0),
    ] = None
    """Decides the share of the circle in place of `fullness`."""

    waist_ease: Annotated[Length | None, StraightSkirt.numbers()["waist_ease"]] = None
    bias_yield: Annotated[
        Length | None,
        Number(
            "by_full",
            "by full",
            "bias yield of a full circle",
            f"{_SRC}5",
            0.6,
            0.25,
            0.0,
            2.0,
        ),
    ] = None

    def said(self) -> str:
        if self.hem is not None:
            return self.sentence.replace(
                "A skirt of {fullness} of a full [circle]",
                "A skirt of a [circle], {hem} round the hem",
            )
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (ROUND_WAIST, CIRCLE, *((BY_HEM,) if self.hem is not None else ()))

    def given(self, unit: Unit) -> Iterable[Given]:
        for number in super().given(unit):
            if number.key != "f" or self.hem is None:
                yield number

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the circle skirt", draft_circle),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return skirt_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return skirt_joints(sheet)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        code, wide = widest_of(sheet.pieces.values())
        yield (
            f"The skirt needs cloth of {fmt(wide)} between the selvedges "
            f"({sheet.piece(code).name.lower()})."
        )
        if n.by_S > 0:
            yield (
                f"The waist is cut {fmt(n.by_S)} smaller all round: it stretches on "
                "the bias; tape it before fitting."
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return (hanging_operation(),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.hem is not None and self.fullness is not None:
            yield Finding(
                "Q5",
                Severity.NOTE,
                "The hem is given (M), so the share of a circle (f) is not used.",
                "f",
                "Leave one of them out.",
            )
        top = above(n, sheet)
        down = (n.WH - top) / (n.L - top)
        yield from over_hip(n, n.wc_S + (n.hem_S - n.wc_S) * down, "f")
        yield from stride(n, n.hem_S, opens=False)
        yield from fits_cloth(n, sheet)


def draft_circle(d: Drafting) -> None:
    """Front (SF) and back (SB) as sectors, their centres plumb."""
    n = d.n
    if n.phi_S > MOST_HALF:
        raise RuleError("the front would lie over itself on its fold: make f smaller")
    d.part = "skirt front"
    d.start("Oc", Point(0.0, 0.0), "centre of the skirt's arcs")
    for code, name, part, front in (
        (FRONT, "Skirt front", "skirt front", True),
        (BACK, "Skirt back", "skirt back", False),
    ):
        d.part = part
        sector = circle.Sector.half(n.r_circle, n.r_hem, n.phi_S, at_right=front)
        side = ("side", EdgeKind.SEAM)
        centre = ("cf" if front else "cb", EdgeKind.FOLD)
        edges = sector.edges(
            ("waist", EdgeKind.SEAM),
            centre if front else side,
            ("hem", EdgeKind.FINISHED),
            side if front else centre,
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(Piece(code, name, edges)),
            code,
            name.lower(),
            amounts=(
                ("with a waist arc of radius {}", "r_circle"),
                ("and a hem arc of radius {}", "r_hem"),
                ("over an angle of {}", "phi_S"),
            ),
            frm=("Oc",),
            detail="both arcs from Oc, joined by lines that run to Oc; the centre is "
            "plumb and lies on the fold",
            over=tuple(
                Path.line(d["Oc"], end)
                for k in edges
                if k.name == "waist"
                for end in (k.path.start, k.path.end)
            ),
        )


def over_hip(n: Numbers, girth: float, symbol: str) -> Iterable[Finding]:
    """Room over the hip (G14), where the skirt reaches it."""
    if n.L < n.WH or girth >= n.H + HIP_ROOM - 1e-9:
        return
    yield Finding(
        "Q2",
        Severity.REFUSE if girth < n.H else Severity.WARN,
        f"At the hip the skirt is {girth:.1f} cm round, the body {n.H:.1f} cm; "
        f"{HIP_ROOM:.0f} cm of room is wanted.",
        symbol,
        f"Make it fuller ({symbol}), or give the waist more ease (Ew).",
        {"skirt": girth, "body": n.H},
    )


def fits_cloth(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Whether the widest piece lies within the cloth of the order (G7)."""
    code, wide = widest_of(sheet.pieces.values())
    if "Cw" in n and wide > n.Cw:
        yield Finding(
            "Q3",
            Severity.WARN,
            f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; the "
            f"cloth is {n.Cw:.1f} cm.",
            code,
            "Lay it across the cloth, seam the cloth, or cut the skirt less full.",
            {"wide": wide, "cloth": n.Cw},
        )

"""Gored skirt: n equal gores, flared from the hip or, as a trumpet, from below it
(blocks G9)."""

from collections.abc import Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal, NamedTuple

from clothwright.blocks.gore import Gore
from clothwright.curves import IDENTITY, Motion, Path, Point, mirror_in
from clothwright.features.about import About, Place
from clothwright.features.base import (
    ONE_BLOCK,
    Cuts,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
)
from clothwright.features.chains import Chains
from clothwright.features.roles import skirt_hem
from clothwright.features.skirts.about import GORE, GORE_FACING
from clothwright.features.skirts.circle_skirt import ROUND_WAIST, fits_cloth
from clothwright.features.skirts.contour_flared import GORE_BAND
from clothwright.features.skirts.gore_seams import gore_joints, gore_seams
from clothwright.features.skirts.straight_skirt import StraightSkirt, stride
from clothwright.findings import Finding, Severity
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
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "blocks G9"

GORED = RuleTable("gored skirt")
_rule = GORED.rule


@_rule("w/n", "waist of a gore", source=_SRC, key="w_gore", formula="(W + Ew)/n")
def _waist(W: float, Ew: float, gores: float) -> float:
    return (W + Ew) / gores


@_rule("h/n", "hip of a gore", source=_SRC, key="h_gore", formula="(H + Eh)/n")
def _hip(H: float, Eh: float, gores: float) -> float:
    return (H + Eh) / gores


@_rule("M/n", "hem of a gore", source=_SRC, key="m_gore", formula="M/n")
def _hem(M: float, H: float, Eh: float, gores: float) -> float:
    if H + Eh - 1e-9 > M:
        raise RuleError(
            f"the hem (M) of {M:.1f} cm is less than the hip with its ease (Eh), "
            f"{H + Eh:.1f} cm: make the hem wider"
        )
    return M / gores


@_rule(
    "flare",
    "flare at each side of a gore, beyond the hip",
    source=_SRC,
    key="flare_S",
    formula="(M − H − Eh)/(2n)",
)
def _flare(m_gore: float, h_gore: float) -> float:
    return (m_gore - h_gore) / 2


@_rule(
    "y0",
    "level at which the flare begins",
    source=_SRC,
    key="y0",
    formula="WH",
    low=10.0,
    high=110.0,
)
def _from(WH: float) -> float:
    return WH


@_rule("hem S", "hem of the skirt, all round", source=_SRC, key="hem_S", formula="M")
def _round(M: float) -> float:
    return M


class Gores(Enum):
    """How many gores there are."""

    FOUR = "four"
    SIX = "six"
    EIGHT = "eight"
    TEN = "ten"
    TWELVE = "twelve"

    @property
    def count(self) -> int:
        return 4 + 2 * list(Gores).index(self)


def _counted(gores: Gores) -> RuleTable:
    page = RuleTable(f"{gores.value} gores")

    @page.rule(
        "n", "gores", source="the order", key="gores", kind=Kind.COUNT, formula="chosen"
    )
    def _count() -> float:
        return gores.count

    return page


_COUNTED = {gores: _counted(gores) for gores in Gores}


class GoredSkirt(Feature):
    """Skirt of equal gores."""

    kind: Literal["gored skirt"] = "gored skirt"
    title: ClassVar[str] = "Gored skirt"
    sentence: ClassVar[str] = (
        "A skirt of {gores} [gores], {length} long from the waist and {hem} round the "
        "hem, with {hip_ease} of ease at the hip."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = ()
    pieces: ClassVar[tuple[About, ...]] = (
        About(GORE, Place.PANEL, ("gore", "panel"), edges={"hem": skirt_hem}),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S37": "seam of the gores or panels of a skirt",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {
            "block",
            "skirt block",
            "shaped skirt",
            "waist",
            "shaped top",
            "plain hem",
            "gores",
        }
    )
    clashes: ClassVar[dict[str, str]] = ONE_BLOCK
    makes_up: ClassVar[dict[str, str]] = StraightSkirt.makes_up

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            _SRC,
            65.0,
            26.0,
            35.0,
            125.0,
            (45.0, 110.0),
        ),
    ] = None
    hem: Annotated[
        Length | None,
        Number(
            "M",
            "M",
            "wanted hem, all round",
            _SRC,
            180.0,
            72.0,
            80.0,
            800.0,
            (120.0, 400.0),
        ),
    ] = None
    flare_from: Annotated[
        Length | None,
        Number(
            "y0",
            "y0",
            "level at which the flare begins, from the waist",
            _SRC,
            low=10.0,
            high=110.0,
        ),
    ] = None
    hip_ease: Annotated[Length | None, StraightSkirt.numbers()["hip_ease"]] = None
    waist_ease: Annotated[Length | None, StraightSkirt.numbers()["waist_ease"]] = None
    gores: Gores = Gores.SIX

    def said(self) -> str:
        if self.flare_from is not None:
            return f"{self.sentence[:-1]}; it flares from {{flare_from}} down."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (ROUND_WAIST, GORED, _COUNTED[self.gores])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the gore", draft_gore),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return gore_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return gore_joints(sheet)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        n = self.gores.count
        out = {c: Cuts(f"{n}", n) for c in (GORE, "NG", "GO")}
        out |= {f"L.{GORE}": Cuts(f"{n}", n, ("lining",))}
        if GORE_FACING in sheet.pieces:
            out[GORE_FACING] = Cuts(f"{n}", n, ("shell", "interlining"))
        return out

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        piece = sheet.piece(GORE)
        waist = piece.edge("waist").length
        if GORE_BAND in sheet.pieces:  # the top is in the band
            waist = 2 * sheet.length(GORE_BAND, "waist") / n.gores
        for code, place, is_, aim, symbol in (
            ("K1", "waist", waist, n.w_gore, "Ew"),
            ("K2", "hem", piece.edge("hem").length, n.m_gore, "M"),
        ):
            off = (is_ - aim) * n.gores
            if abs(off) > 0.1:
                yield Finding(
                    code,
                    Severity.REFUSE,
                    f"The {place} of the gores together is off by {off:.1f} cm.",
                    symbol,
                    "Measure W and H again, or choose another hem (M).",
                    {"off": off},
                )
        room = _gore(n).width_at(n.WHH) * n.gores - n.HH
        if room < 1.0:
            yield Finding(
                "K8",
                Severity.WARN,
                f"Over the high hip (HH) the skirt leaves {room:.1f} cm of room.",
                "HH",
                "Measure HH and WHH again, or give the hip more ease (Eh).",
                {"room": room},
            )
        yield from stride(n, n.hem_S, opens=False)
        yield from fits_cloth(n, sheet)


def _gore(n: Numbers) -> Gore:
    return gore_of(n, n.w_gore, n.h_gore, n.m_gore)


def gore_of(n: Numbers, waist: float, hip: float, hem: float) -> Gore:
    """A gore of these widths, cm, at the levels of the numbers. Raises RuleError."""
    if n.y0 < n.WH - 0.01:
        raise RuleError(
            "the flare (y0) begins above the hip (WH): begin it at the hip or below"
        )
    if n.WH > n.L - 10.0:
        raise RuleError(
            "the skirt (L) ends less than 10 cm below the hip (WH): make it longer"
        )
    if n.y0 > n.L - 10.0:
        raise RuleError(
            "the flare (y0) begins less than 10 cm above the hem: begin it higher"
        )
    return Gore(waist, hip, hem, n.WH, n.L, n.y0)


class GoreLines(NamedTuple):
    """Lines of a gore about its centre, which is plumb at x = 0; cm."""

    seam: Path
    """From the waist to the hem, at the right."""

    waist: Path
    """From the centre to the seam."""

    hem: Path
    """From the seam to the centre."""


def rule_gore(
    d: Drafting, gore: Gore, k: str, word: str, line: str, onto: Motion = IDENTITY
) -> GoreLines:
    """Mark and draw one gore's lines, laid where `onto` lays them: `k` ends the names
    of its marks, `word` is what it is called, `line` the name of its seam. Raises
    RuleError."""
    try:
        seam, waist, hem = gore.seam(), gore.half_waist(), gore.half_hem()
    except ValueError as e:
        raise RuleError(
            f"{e}: measure W, H and WH again, or choose another hem (M)"
        ) from e
    d.start(f"O{k}", onto(Point(0.0, 0.0)), f"centre of the {word} at the waist")
    d.point(f"M{k}", f"O{k}", f"centre of the {word} at the hem", down="L")
    d.found(
        f"H{k}",
        onto(gore.hip_point),
        "seam at the hip",
        amounts=(
            ("from the centre", gore.hip_point.x),
            ("below the waist", gore.hip_point.y),
        ),
        detail=f"half of the {word}'s hip",
    )
    d.found(
        f"W{k}",
        onto(seam.start),
        "seam at the waist",
        amounts=(
            ("from the centre", seam.start.x),
            ("above the waist level", -seam.start.y),
        ),
        detail="so that the seam is as long as the centre",
    )
    d.found(
        f"E{k}",
        onto(seam.end),
        "seam at the hem",
        amounts=(("from the centre", seam.end.x), ("below the waist", seam.end.y)),
    )
    d.draw(
        line,
        seam.moved(onto),
        f"seam of the {word}",
        frm=(f"W{k}", f"H{k}", f"E{k}"),
        detail=f"in a slight curve over the hip, {_below_hip(gore)}",
    )
    return GoreLines(seam, waist, hem)


def _below_hip(gore: Gore) -> str:
    """How the seam of a gore runs on from the hip."""
    if gore.lean == 0.0:
        return "plumb from there to the hem"
    on = " and on to the flare" if gore.flare_from > gore.hip_level + 0.01 else ""
    return f"plumb there{on}, then turning into the flare, which is straight"


def draft_gore(d: Drafting, word: str = "gore") -> None:
    """One gore (SG), about its centre line; all are alike. `word` is what it is
    called."""
    d.part = word
    gore = _gore(d.n)
    seam, waist, hem = rule_gore(d, gore, "g", word, "gore seam")
    over = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
    edges = (
        Edge("waist", waist.moved(over).reversed() + waist),
        Edge("seam", seam),
        Edge("hem", hem + hem.moved(over).reversed(), EdgeKind.FINISHED),
        Edge("other seam", seam.moved(over).reversed()),
    )
    hip = Path.line(gore.hip_point, Point(-gore.hip_point.x, gore.hip_point.y))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(
            Piece(GORE, word.capitalize(), edges, lines=(InnerLine("hip", hip),))
        ),
        GORE,
        word,
        amounts=(("round the waist", "w_gore"), ("round the hem", "m_gore")),
        detail="the same on both sides of the centre; waist and hem meet the seams at "
        "right angles",
    )

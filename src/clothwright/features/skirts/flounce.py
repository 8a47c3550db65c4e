"""Flounce: a ring sewn to the hem of a skirt (blocks G13)."""

import math
from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import Sector
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.cloth import widest_of
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.gathered_skirt import TIERS
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "blocks G13"

MOST, MOST_FOLDED = 340.0, 170.0
"""Most degrees of a flounce in one piece, and of a half that lies on the fold: its ends
need their allowance."""

FLOUNCES = {FRONT: "NF", BACK: "NB", GORE: "NG"} | dict.fromkeys(TIERS, "NT")
"""Code of the flounce of each piece that a skirt ends in."""

_NAMES = {
    "NF": "Front flounce",
    "NB": "Back flounce",
    "NG": "Flounce of a gore",
    "NT": "Flounce",
}

FLOUNCE = RuleTable("flounce")


@FLOUNCE.rule(
    "r flounce",
    "inner radius of the flounce",
    source=_SRC,
    key="r_flounce",
    formula="D/(q − 1)",
)
def _radius(D_flounce: float, q_flounce: float) -> float:
    return D_flounce / (q_flounce - 1)


@FLOUNCE.rule(
    "r flounce hem",
    "outer radius of the flounce",
    source=_SRC,
    key="r_flounce_hem",
    formula="r + D",
)
def _outer(r_flounce: float, D_flounce: float) -> float:
    return r_flounce + D_flounce


class Flounce(Feature):
    """Flounce at the hem."""

    kind: Literal["flounce"] = "flounce"
    title: ClassVar[str] = "Flounce"
    sentence: ClassVar[str] = (
        "To the hem is sewn a [flounce], {depth} deep, its hem {fullness} times as "
        "long as that of the skirt."
    )
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, Place.FLOUNCE, ("flounce",)) for code in _NAMES
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S50": "flounce on a hem",
        "S51": "centre of a flounce",
        "S52": "side of a flounce",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"hem finish", "closed hem"})
    needs: ClassVar[dict[str, str]] = {"skirt block": "a flounce is sewn to a skirt"}
    clashes: ClassVar[dict[str, str]] = {
        "hem finish": "the hem of a skirt ends one way only",
        "vent": "a flounce closes the hem: leave the vent off",
    }

    depth: Annotated[
        Length | None,
        Number(
            "D_flounce",
            "D",
            "depth of the flounce",
            _SRC,
            20.0,
            8.0,
            4.0,
            60.0,
            (8.0, 40.0),
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "q_flounce",
            "q",
            "hem of the flounce to that of the skirt",
            _SRC,
            1.75,
            None,
            1.1,
            5.0,
            (1.3, 2.5),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FLOUNCE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SKIRT, "the flounce", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _sewn_on(t)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if "NT" not in sheet.pieces:
            return {}
        fold = sheet.piece("NT").fold is not None
        return {"NT": Cuts("2 on fold", 2) if fold else Cuts("4 (2 pairs)", 4)}

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        code, wide = widest_of(
            sheet.piece(c) for c in set(FLOUNCES.values()) if c in sheet.pieces
        )
        if "Cw" in n and wide > n.Cw:
            yield Finding(
                "Q3",
                Severity.WARN,
                f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; "
                f"the cloth is {n.Cw:.1f} cm between its selvedges.",
                code,
                "Lay it across the cloth, or make the flounce less full (q).",
                {"wide": wide, "cloth": n.Cw},
            )


def hems(sheet: Sheet) -> tuple[str, ...]:
    """Codes of the pieces that a skirt ends in."""
    return tuple(c for c in FLOUNCES if c in sheet.pieces and sheet.piece(c).has("hem"))


def _draft(d: Drafting) -> None:
    """A ring's part for every piece of the hem: its inner arc is as long."""
    n = d.n
    d.part = "flounce"
    for code in hems(d.sheet):
        skirt = d.sheet.piece(code)
        hem = skirt.edge("hem")
        degrees = math.degrees(hem.length / n.r_flounce)
        if degrees > MOST:
            raise RuleError(
                f"the flounce of one piece would fill {degrees:.0f}° of a ring: make "
                "it less full (q), or deeper (D)"
            )
        piece = _ring(code, degrees, n)
        seamed = skirt.with_edge(Edge("hem", hem.path, EdgeKind.SEAM))
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(seamed, piece),
            piece.code,
            piece.name.lower(),
            amounts=(
                ("with an inner arc of radius {}", "r_flounce"),
                ("as long as the hem above it, {}", hem.length),
                ("and an outer arc of radius {}", "r_flounce_hem"),
            ),
            detail="both arcs from one centre, joined by lines that run to it",
        )


def _ring(code: str, degrees: float, n: Numbers) -> Piece:
    name = FLOUNCES[code]
    seam = EdgeKind.SEAM
    radii = n.r_flounce, n.r_flounce_hem
    top, hem = ("top", seam), ("hem", EdgeKind.FINISHED)
    if code == GORE:
        sector = Sector.whole(*radii, degrees)
        edges = sector.edges(top, ("seam", seam), hem, ("other seam", seam))
        return Piece(name, _NAMES[name], edges)
    front = code != BACK
    sector = Sector.half(*radii, degrees, at_right=front)
    kind = EdgeKind.FOLD if degrees <= MOST_FOLDED else seam
    centre, side = ("cf" if front else "cb", kind), ("side", seam)
    edges = sector.edges(top, centre if front else side, hem, side if front else centre)
    return Piece(name, _NAMES[name], edges)


def _sewn_on(t: Chains) -> list[Seam]:
    """Each part of a flounce to its hem, and to the next part."""
    out: list[Seam] = []
    for code in hems(t.sheet):
        name = FLOUNCES[code]
        if name not in t.sheet.pieces:
            continue
        left = t.chain((code, "hem", False))
        right = t.chain((name, "top", True))
        says = t.sheet.piece(name).name.lower()
        ease = Ease.about(0.0, 0.05)
        onto = f"{says} to the {t.sheet.piece(code).name.lower()}"
        out.append(Seam(f"S50.{name}", onto, left, right, "", "", ease))
        for edge in ("cf", "cb"):
            if t.has(name, edge) and t.sheet.edge(name, edge).kind is EdgeKind.SEAM:
                chain = t.chain((name, edge, edge == "cb"))
                out.append(
                    Seam(
                        f"S51.{name}",
                        f"centre of the {says}",
                        chain,
                        chain,
                        "top",
                        "hem",
                        ease,
                        kind=SeamKind.TWIN,
                    )
                )
    for first, second in (
        (("NF", "side", True), ("NB", "side", False)),
        (("NT", "side", True), ("NT", "side", True)),
        (("NG", "seam", False), ("NG", "other seam", True)),
    ):
        left, right = t.chain(first), t.chain(second)
        if left and right:
            twin = SeamKind.TWIN if first == second else SeamKind.PLAIN
            ease = Ease.about(0.0, 0.05)
            out.append(
                Seam("S52", "flounce side", left, right, "top", "hem", ease, kind=twin)
            )
    return out

"""Godets: sectors let into the seams of a skirt at its hem (blocks G12)."""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import Sector, godet_hem
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.skirts.about import GORE
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    Piece,
    Seam,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Angle, Length

_SRC = "blocks G12"

GODET = "GO"
"""Code of the piece."""

SLITS = {
    (FRONT, "side"): "slit",
    (BACK, "side"): "slit",
    (GORE, "seam"): "gore slit",
    (GORE, "other seam"): "other gore slit",
}
"""Seams that are left open for a godet, and the name of what is left open."""

GODET_EDGES = ("slit", "other slit"), ("other gore slit", "gore slit")
"""Left and right edge of a godet in a side seam, and of one between gores."""

_BELOW_HIP = 5.0
"""A slit begins at least so far below the hip, cm (our own choice)."""

GODETS = RuleTable("godets")


@GODETS.rule(
    "godet hem",
    "what each godet adds to the hem",
    source=_SRC,
    key="godet_hem",
    formula="β·d",
)
def _adds(d_godet: float, b_godet: float) -> float:
    return godet_hem(d_godet, b_godet)


class Godets(Feature):
    """Godets in the seams at the hem."""

    kind: Literal["godets"] = "godets"
    title: ClassVar[str] = "Godets"
    sentence: ClassVar[str] = (
        "Into the seams are let [godets], {height} high, that open by {angle}."
    )
    pieces: ClassVar[tuple[About, ...]] = (About(GODET, Place.GODET, ("godets",)),)
    seams: ClassVar[Mapping[str, str]] = {
        "S53": "godet",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"hem finish", "closed hem"})
    needs: ClassVar[dict[str, str]] = {
        "shaped skirt": "godets go into the seams of a straight or a gored skirt"
    }
    clashes: ClassVar[dict[str, str]] = {
        "hem finish": "the hem of a skirt ends one way only",
        "skirt lining": "a skirt with godets is left unlined",
    }

    height: Annotated[
        Length | None,
        Number(
            "d_godet",
            "d",
            "height of a godet, along its slit",
            _SRC,
            25.0,
            10.0,
            8.0,
            80.0,
            (15.0, 45.0),
        ),
    ] = None
    angle: Annotated[
        Angle | None,
        Number(
            "b_godet",
            "β",
            "angle of a godet",
            _SRC,
            60.0,
            None,
            15.0,
            180.0,
            (30.0, 120.0),
            Kind.ANGLE,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (GODETS,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SKIRT, "the godets", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _let_in(t)


def _draft(d: Drafting) -> None:
    """Leave the seams open, and draw the sector that goes in."""
    n = d.n
    room = n.L - n.WH - _BELOW_HIP
    if n.d_godet > room:
        raise RuleError(
            f"a godet (d) of {n.d_godet:.1f} cm begins less than {_BELOW_HIP:.0f} cm "
            f"below the hip; at most {room:.1f} cm is left: make it less high"
        )
    sheet = d.sheet
    for (code, name), slit in SLITS.items():
        if code in sheet.pieces:
            sheet = _opened(sheet, code, name, slit, n.d_godet)
    seam = EdgeKind.SEAM
    left, right = GODET_EDGES[GORE in sheet.pieces]
    edges = Sector.whole(0.0, n.d_godet, n.b_godet).edges(
        ("top", seam), (right, seam), ("hem", EdgeKind.FINISHED), (left, seam)
    )
    d.part = "godets"
    d.lay(
        Verb.OUTLINE,
        sheet.put(Piece(GODET, "Godet", edges)),
        GODET,
        "godet",
        amounts=(
            ("with an arc of radius {}", "d_godet"),
            ("over an angle of {}", "b_godet"),
        ),
        detail="its two straight edges are sewn into the seams, open from there down",
    )


def _opened(sheet: Sheet, code: str, name: str, slit: str, height: float) -> Sheet:
    """A seam divided where its slit begins."""
    edge = sheet.edge(code, name)
    upwards = sheet.piece(code).before(name).name == "hem"
    at = height if upwards else edge.length - height
    first, second = edge.path.split_at_length(at)
    names = (slit, name) if upwards else (name, slit)
    parts = [Edge(k, p) for k, p in zip(names, (first, second), strict=True)]
    return redraw(sheet, code, [name], parts)


def _let_in(t: Chains) -> list[Seam]:
    """A godet into the slits of a seam."""
    out: list[Seam] = []
    for i, (slit, edge) in enumerate(
        (
            ((FRONT, "slit", True), (GODET, "slit", True)),
            ((BACK, "slit", False), (GODET, "other slit", False)),
            ((GORE, "gore slit", False), (GODET, "other gore slit", True)),
            ((GORE, "other gore slit", True), (GODET, "gore slit", False)),
        ),
        1,
    ):
        left, right = t.chain(slit), t.chain(edge)
        if left and right:
            ease = Ease.about(0.0, 0.05)
            out.append(Seam(f"S53.{i}", "godet", left, right, "point", "hem", ease))
    return out

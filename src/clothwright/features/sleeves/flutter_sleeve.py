"""A flutter sleeve: part of a ring, its inner edge sewn plain into the armhole
(transformations 4)."""

import math
from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import arc
from clothwright.blocks.sleeve import EASE_BACK, PLAIN
from clothwright.curves import Point, bearing
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.sleeves.about import SLEEVE_PIECE, SLEEVE_SEAMS
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_findings import notch_findings
from clothwright.features.sleeves.sleeve_joints import sleeve_joints
from clothwright.features.sleeves.sleeve_seams import sleeve_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 4"

LEAST_GAP = 4.0
"""Between the two seams of the ring at its inner edge, cm: two allowances and a little
(our own)."""

FLUTTER = RuleTable("flutter sleeve")
_rule = FLUTTER.rule


@_rule(
    "cap",
    "inner edge of the sleeve",
    source=_SRC,
    key="ring_cap",
    formula="Af + Ab + E",
)
def _cap(A_f: float, A_b: float, E_cap: float) -> float:
    return A_f + A_b + E_cap


@_rule("A", "armhole", source="blocks B", formula="Af + Ab", key="A_hole")
def _armhole(A_f: float, A_b: float) -> float:
    return A_f + A_b


@_rule(
    "r sleeve",
    "radius of the sleeve's inner edge",
    source=_SRC,
    key="ring_r",
    formula="cap/φ; φ = 2π·part of a circle",
)
def _radius(ring_cap: float, ring_part: float) -> float:
    return ring_cap / (2 * math.pi * ring_part)


class FlutterSleeve(Feature):
    """Flared short sleeve without a crown: part of a ring."""

    kind: Literal["flutter sleeve"] = "flutter sleeve"
    title: ClassVar[str] = "Flutter sleeve"
    sentence: ClassVar[str] = (
        "Flutter [sleeves], {length} long, cut as {part} of a circle."
    )
    shows: ClassVar[Shown] = {
        "E": ("SL.cap back",),
        "Qf": ("SL.cap front",),
    }
    pieces: ClassVar[tuple[About, ...]] = (SLEEVE_PIECE,)
    seams: ClassVar[Mapping[str, str]] = SLEEVE_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve", "armhole finish"})
    needs: ClassVar[dict[str, str]] = SetInSleeve.needs
    clashes: ClassVar[dict[str, str]] = SetInSleeve.clashes

    length: Annotated[
        Length | None,
        Number(
            "ring_long",
            "flutter length",
            "length of the flutter sleeve",
            _SRC,
            12.0,
            4.75,
            5.0,
            30.0,
            (8.0, 15.0),
        ),
    ] = None
    part: Annotated[
        Ratio | None,
        Number(
            "ring_part",
            "flutter part",
            "part of a circle that a flutter sleeve is cut as",
            _SRC,
            0.6,
            None,
            0.25,
            0.95,
            (0.4, 0.9),
            Kind.RATIO,
        ),
    ] = None
    cap_ease: Annotated[
        Length | None,
        Number(
            "E_cap",
            "E",
            "ease of the cap over the armhole",
            "blocks B1",
            0.5,
            0.25,
            0.0,
            3.0,
            (0.0, 1.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (PLAIN, FLUTTER)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE, "the sleeve", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return sleeve_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return sleeve_joints(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from notch_findings(sheet)
        gap = 2 * n.ring_r * math.sin(math.pi * min(1.0 - n.ring_part, 0.5))
        if gap < LEAST_GAP:
            yield Finding(
                "FL1",
                Severity.REFUSE,
                f"The two seams of the ring are only {gap:.1f} cm apart at its inner "
                f"edge; {LEAST_GAP:g} cm leave room for both allowances.",
                "flutter part",
                "Make it a smaller part of a circle (flutter part).",
                {"gap": gap},
            )


def _draft(d: Drafting) -> None:
    """Draft the ring SL about its centre: back seam, over the inner edge, front seam,
    hem; the shoulder notch K where the back's share of it ends."""
    n = d.n
    d.part = "sleeve"
    o = d.start("Os", Point(0.0, 0.0), "centre of the flutter sleeve")
    r, far = n.ring_r, n.ring_r + n.ring_long
    half = 180.0 * n.ring_part
    # the ring lies below its centre: clockwise from the front is towards the back
    front, back = 90.0 - half, 90.0 + half
    share = (n.A_b + EASE_BACK * n.E_cap) / n.ring_cap
    at = back - 2 * half * share

    def on(radius: float, degrees: float) -> Point:
        return o + bearing(degrees) * radius

    aside, up = on(r, front) - o
    d.found(
        "Uf",
        on(r, front),
        "front end of the inner edge",
        frm=("Os",),
        amounts=(
            ("from Os to the front", abs(aside)),
            ("down" if up > 0 else "up", abs(up)),
        ),
        detail="the inner edge is an arc about Os through it",
    )
    d.found(
        "Ub",
        on(r, back),
        "back end of the inner edge",
        frm=("Uf",),
        amounts=(
            ("from Os, as far as Uf", "ring_r"),
            ("along the arc from Uf, below Os", "ring_cap"),
        ),
    )
    d.found(
        "K",
        on(r, at),
        "where the shoulder seam meets the cap",
        frm=("Ub",),
        amounts=(("along the arc from Ub", n.ring_cap * share),),
        detail="the back armhole and its share of the ease",
    )
    edges = (
        Edge("cap back", arc(o, r, back, at)),
        Edge("cap front", arc(o, r, at, front)),
        straight("underarm front", on(r, front), on(far, front)),
        Edge("hem", arc(o, far, front, back), EdgeKind.FINISHED),
        straight("underarm back", on(far, back), on(r, back)),
    )
    piece = Piece(
        "SL",
        "Flutter sleeve",
        edges,
        grain=(on(far - 1.0, 90.0), on(r + 1.0, 90.0)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "SL",
        "flutter sleeve, part of a ring",
        amounts=(("inner radius", "ring_r"), ("wide", "ring_long")),
    )

"""All-in-one facings of neck, armhole and slanted edge (first garment 14).

Traced from the shell with the panels in their sewn state, set inside by the roll, and
shortened at the shoulder by what the roll makes their edges longer.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import TOP, Chains
from clothwright.features.linings.about import FACED, FACINGS
from clothwright.features.linings.facing_checks import facing_findings
from clothwright.features.linings.facing_pieces import back_facing, front_facing
from clothwright.features.linings.facing_seams import facing_seams
from clothwright.features.linings.facing_sewing import facing_operations
from clothwright.features.linings.sewn_halves import (
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.necks.cowl import lay_cut_on
from clothwright.features.operations import Operation
from clothwright.findings import Finding
from clothwright.paper import Drafting, Piece, Seam, Sheet, Verb
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 14"

BELOW_C = 6.5, 2.5
"""Depth of the facing at the centre below the neck: cm, inches (14.2)."""

FACING = RuleTable("facing")


@FACING.rule(
    "left",
    "least that the strip may leave of the back beside it",
    source=f"{_SRC}.3",
    key="strip_left",
)
def _left() -> float:
    return 1.0


class Facing(Feature):
    """All-in-one facing of neck and armholes."""

    kind: Literal["facing"] = "facing"
    title: ClassVar[str] = "Facing"
    sentence: ClassVar[str] = (
        "Neck and armholes are [faced] in one, {side} deep below the arm, the edge "
        "rolled {roll} to the inside."
    )
    shows: ClassVar[Shown] = {
        "ρ": ("FF.neck",),
    }
    pieces: ClassVar[tuple[About, ...]] = FACINGS
    seams: ClassVar[Mapping[str, str]] = FACED
    gives: ClassVar[frozenset[str]] = frozenset({"inside finish", "faced armholes"})
    needs: ClassVar[dict[str, str]] = {
        "sleeveless": "an all-in-one facing is for a sleeveless top; with sleeves "
        'take a "neck facing"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "inside finish": "the edges are finished one way only"
    }

    roll: Annotated[
        Length | None,
        Number("rho", "ρ", "roll of the facing", f"{_SRC}.4", 0.3, 0.125, 0.0, 0.6),
    ] = None
    side: Annotated[
        Length | None,
        Number(
            "ff_side",
            "facing at the side",
            "facing below the underarm",
            f"{_SRC}.2",
            5.0,
            2.0,
            3.0,
            10.0,
        ),
    ] = None
    centre: Annotated[
        Length | None,
        Number(
            "ff_cf",
            "facing at the centre",
            "facing below the neck at the centre",
            f"{_SRC}.2",
            BELOW_C[0],
            BELOW_C[1],
            3.0,
            12.0,
        ),
    ] = None
    strip: Annotated[
        Length | None,
        Number(
            "sw",
            "sw",
            "strip of facing beside the slanted edge",
            f"{_SRC}.3",
            4.0,
            1.5,
            2.5,
            8.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FACING,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the facings", draft_facings),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return facing_seams(t, n)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return facing_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return facing_findings(n, sheet)


def _below_top(d: Drafting, front: Piece) -> None:
    """The facings of a strapless bodice."""
    back = back_facing(d.sheet, d.n, 0.0)
    for piece, half in ((front, "front"), (back, "back")):
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            piece.code,
            f"{half} facing of the top edge",
            amounts=(
                ("lower than the edge by {}", "rho"),
                ("below the top at the side", piece.edge("side").length),
            ),
            detail=f"from the {half} with its panels laid together at the top",
            over=(sewn_front if half == "front" else sewn_back)(d.sheet).outlines(),
        )


def draft_facings(d: Drafting) -> None:
    """Trace front facing FF and back facing BF, their shoulders of one length."""
    d.part = "facing"
    n = d.n
    front = front_facing(d.sheet, n)
    if front.has(TOP):
        _below_top(d, front)
        return
    target = front.edge("shoulder").length
    if not front.has("neck"):  # a cowl, whose facing takes the other half
        lay_cut_on(d, target)
    d.lay(
        Verb.TRACE,
        d.sheet.put(front),
        "FF",
        "front facing",
        amounts=(
            ("inside the edge by {}", "rho"),
            ("below the underarm", "ff_side"),
            ("below the neck at the fold", "ff_cf"),
            ("long at the shoulder", target),
        ),
        detail="from the front with its panels laid together; what the roll adds to "
        "the edges is cut off at the shoulder",
        over=sewn_front(d.sheet).outlines(),
    )
    if not front.has("neck"):
        target *= 2
    back = back_facing(d.sheet, n, target)
    shoulder = (("long at the shoulder", target),) if back.has("shoulder") else ()
    strip = (("beside the slanted edge", "sw"),) if back.has("slant") else ()
    d.lay(
        Verb.TRACE,
        d.sheet.put(back),
        "BF",
        "back facing",
        amounts=(
            ("inside the edge by {}", "rho"),
            ("below the underarm", "ff_side"),
            *strip,
            *shoulder,
        ),
        detail="from the back with its panels laid together; its edge crosses the "
        "panel seam no lower than the point of the dart; the shoulder shortened to the "
        "front facing's length",
        over=back_under(d.sheet, back).outlines(),
    )

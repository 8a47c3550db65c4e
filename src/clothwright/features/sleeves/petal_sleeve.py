"""A petal sleeve: two halves of a short sleeve that cross at the top of the cap
(transformations 4, tulip)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector, distance, mix, turned
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.features.sleeves.sleeve_joints import petal_joints
from clothwright.features.sleeves.sleeve_seams import petal_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, Piece, Seam, Sheet, Verb
from clothwright.rules import Numbers
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "transformations 4"


class PetalSleeve(Feature):
    """Short sleeve of two petals, the front one over the back one."""

    kind: Literal["petals"] = "petals"
    title: ClassVar[str] = "Petal sleeve"
    sentence: ClassVar[str] = (
        "The sleeve is cut as two [petals] that cross by {overlap} at the top."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About("SLF", Place.SLEEVE, ("sleeve",)),
        About("SLB", Place.SLEEVE, ("sleeve",)),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S104": "front petal of a sleeve, on the back one",
        "S105": "back petal of a sleeve, under the front one",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve hem", "petals"})
    needs: ClassVar[dict[str, str]] = {
        "straight sleeve": "petals are cut of a straight sleeve; set elbow = "
        '"straight" of the "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "sleeve hem": "a sleeve has one kind of hem",
        "sleeve end": "petals hang free; leave the band or cuff off",
        "sleeve cap": "petals cross on a plain cap; leave the puffed cap off",
    }

    overlap: Annotated[
        Length | None,
        Number(
            "petals",
            "petals",
            "overlap of the petals along the cap",
            _SRC,
            8.0,
            3.0,
            4.0,
            14.0,
            (6.0, 10.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEM, "the petals", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return petal_seams(t)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return petal_joints(sheet)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield Operation(
            Work.CUFF,
            "Hem the petals",
            ("Turned twice, narrow, from the cap round to the seam.",),
            edges=finished_edges(sheet, ("SLF", "SLB"), "hem"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.NARROW_HEM,
        )
        yield Operation(
            Work.SLEEVE_HEAD,
            "Lay the front petal over the back one",
            (
                f"Right sides up, {fmt(n.petals)} of the two caps on each other, the "
                "notches of the shoulder together; baste.",
            ),
            seams=both_sides(sheet, "S104", "S105"),
            stitch=Stitch.LOCK,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.under_arm > 12.0:
            yield Finding(
                "PE1",
                Severity.WARN,
                f"The petals are {n.lh:.1f} cm long and gape when the arm is raised.",
                "lh",
                "Make the sleeve shorter.",
                {"lh": n.lh},
            )


def _draft(d: Drafting) -> None:
    """Draw the front edge of each petal from beyond the top of the cap to the hem, and
    trace the petals SLF and SLB apart."""
    n = d.n
    d.part = "sleeve"
    sl = d.sheet.piece("SL")
    back, front = sl.edge("cap back").path, sl.edge("cap front").path
    hem = sl.edge("hem").path
    half = n.petals / 2
    below, top = back.split_at_length(back.length - half)
    first, rest = front.split_at_length(half)
    at = d.found(
        "Pe1",
        top.start,
        "upper end of the front petal, on the back of the cap",
        amounts=(("along the cap from K", half),),
    )
    other = d.found(
        "Pe2",
        rest.start,
        "upper end of the back petal, on the front of the cap",
        amounts=(("along the cap from K", half),),
    )
    hf, hb = hem.start, hem.end
    f_edge = d.draw(
        "petal front",
        _petal(hf, at, top.start_direction),
        "edge of the front petal",
        frm=("Hf", "Pe1"),
        detail="square to the seam and square to the cap, round in between",
    )
    b_edge = d.draw(
        "petal back",
        _petal(hb, other, rest.start_direction * -1.0).reversed(),
        "edge of the back petal",
        frm=("Hb", "Pe2"),
        detail="as the other, to the other side",
    )
    front_piece = Piece(
        "SLF",
        "Front petal",
        (
            Edge("cap lap", top),
            Edge("cap first", first),
            Edge("cap front", rest),
            sl.edge("underarm front"),
            Edge("hem", f_edge, EdgeKind.FINISHED),
        ),
        grain=(Point(3.0, mix(hf, at, 0.4).y), Point(3.0, first.end.y + 1.5)),
    )
    back_piece = Piece(
        "SLB",
        "Back petal",
        (
            Edge("cap back", below),
            Edge("cap last", top),
            Edge("cap lap", first),
            Edge("hem", b_edge, EdgeKind.FINISHED),
            sl.edge("underarm back"),
        ),
        grain=(Point(-3.0, mix(hb, other, 0.4).y), Point(-3.0, first.end.y + 1.5)),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.without("SL").put(front_piece, back_piece),
        "SLF, SLB",
        "the two petals, each with its own edge",
        lines=(f_edge, b_edge),
    )


def _petal(end: Point, top: Point, along: Vector) -> Path:
    """From the foot of a seam, which it leaves level, to the cap, square to it."""
    side = -1.0 if top.x < end.x else 1.0
    reach = distance(end, top)
    square = turned(along, 90 if side < 0 else -90)
    return Path.cubic(
        end,
        end + Vector(side * 0.5 * reach, 0.0),
        top + square * (0.45 * reach),
        top,
    )

"""Pockets in the sides of a knit bodice or skirt (transformations §9)."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import knit
from clothwright.blocks.knit_skirt import SKIRT
from clothwright.curves import Point, mirror_in
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
    tape_on,
)
from clothwright.features.roles import Role
from clothwright.features.skirts.about import POCKET_SEAMS
from clothwright.features.skirts.pocket_drawing import (
    BAG,
    OFF_CENTRE,
    bag_findings,
    hang_from_seam,
    off_centre,
    pocket_seams,
)
from clothwright.features.skirts.skirt_pockets import SkirtPockets, hand_findings
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_TAPED_ON = 4.0
"""The tape of a mouth is so much longer than it, cm (common practice, no source)."""

_WIDE = "pkw"
"""Symbol of the bag's width."""

IN_SIDES = RuleTable("pockets in the sides of a knit")


@IN_SIDES.rule(
    _WIDE,
    "width of the pocket bag",
    source="transformations §9",
    key="pk_wide",
    formula="15.5 cm, but 2 cm off the centre front",
    low=11.0,
    high=22.0,
)
def _bag_wide(q_waist: float) -> float:
    return min(15.5, q_waist - OFF_CENTRE)


_T = SkirtPockets.numbers()


class KnitSidePockets(Feature):
    """Two pockets in the side seams of a knit, their bags of its own cloth."""

    kind: Literal["knit side pockets"] = "knit side pockets"
    title: ClassVar[str] = "Pockets in the sides of a knit"
    sentence: ClassVar[str] = (
        "[Pockets] lie in the side seams, from {begin} below the waist, their bags "
        "{bag} deep."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(BAG, Place.POCKET, ("knit front", "knit skirt"), others=Role.KNIT),
    )
    seams: ClassVar[Mapping[str, str]] = POCKET_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"pockets"})
    needs: ClassVar[dict[str, str]] = {
        "knit front": "these pockets lie in the sides of a knit bodice or skirt"
    }
    clashes: ClassVar[dict[str, str]] = {
        "pockets": "a garment has one pair of pockets at its sides",
        "set pocket": "the bags of pockets in the sides hang behind the front where "
        "the others would be stitched on; leave one pair off",
    }

    begin: Annotated[
        Length | None, replace(_T["begin"], name="mouth in the side, below the waist")
    ] = None
    mouth: Annotated[Length | None, _T["mouth"]] = None
    bag: Annotated[Length | None, _T["bag"]] = None
    bag_width: Annotated[
        Length | None,
        replace(_T["bag_width"], symbol=_WIDE, cm=None, inch=None),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (IN_SIDES,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the pockets", _draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*pocket_seams(t, knit.FRONT), *pocket_seams(t, SKIRT))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {BAG: Cuts("4 (2 pairs)", 4)}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        long = n.pk_mouth + _TAPED_ON
        yield Notion(Article.TAPE, 2, "for the pocket mouths", length=long)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"Pockets: tape the front's side along the mouth of {fmt(n.pk_mouth)} "
            "(notches), sew the bags to both sides, and the sides and the bags in one "
            "run, past the mouth."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        long = n.pk_mouth + _TAPED_ON
        yield tape_on("pocket mouths on the front", long, 2, fmt, Work.STAY)
        yield Operation(
            Work.PANEL,
            "Sew the bags of the pockets to the sides",
            (
                "Each to its half from notch to notch, right sides together; press "
                "them out, beyond the side.",
                "The sides are sewn above and below the mouth; then the bags round, "
                "which hang in front.",
            ),
            seams=tuple(s.code for s in sheet.seams if s.code == "S47"),
            edges=finished_edges(sheet, (BAG,)),
            stitch=Stitch.FOUR_THREAD,
            seam_type=SeamType.PLAIN,
            press="flat",
            task=Task.SIDE_POCKET,
            count=2.0,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from bag_findings(n, sheet, slant=False)
        bag = sheet.piece(BAG)
        if knit.FRONT in sheet.pieces:
            yield from off_centre(bag, n.X, _WIDE)
        else:  # its centre lies at the left
            over = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
            yield from off_centre(bag.moved(over), 0.0, _WIDE)
        yield from hand_findings(n, _WIDE)


def _draw(d: Drafting) -> None:
    if knit.FRONT in d.sheet.pieces:
        d.part = "knit front"
        side = d.sheet.edge(knit.FRONT, "side").path
        up = side if side.start.y > side.end.y else side.reversed()
        waist = up.length_to_point(d["Wf"])
        hang_from_seam(d, knit.FRONT, up.between(0.0, waist))
        return
    d.part = "knit skirt"
    side = d.sheet.edge(SKIRT, "side").path.reversed()
    hang_from_seam(d, SKIRT, side, at_left=False)

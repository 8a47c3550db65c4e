"""Halter: the front hangs from a band behind the neck, the back is cut away to the line
of the brassiere (transformations 1.8, 2).

The armhole runs from the strap at the neck to a raised underarm; a wedge is folded out
of it towards the bust point. The front's short shoulder is sewn to the band, the back
has none.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import (
    inward_front,
)
from clothwright.curves import (
    Point,
)
from clothwright.features.about import About, Place
from clothwright.features.base import (
    Cuts,
    Feature,
    NeckEnd,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
)
from clothwright.features.bodice.shoulder import SHOULDER
from clothwright.features.chains import Chains
from clothwright.features.necks.halter_cut import (
    cut_both,
    draw_band,
    draw_in,
    mark_strap,
)
from clothwright.features.necks.halter_rules import (
    BY_NECK,
    BY_NN,
    HALTER,
    HALTER_BAND,
    SRC,
    halter_findings,
)
from clothwright.features.necks.halter_seams import halter_joints, halter_seams
from clothwright.features.necks.neck_contour import MOST_FOLDED
from clothwright.features.necks.neck_shapes import (
    FRONT_CURVES,
    HOW_FRONT,
    TILTED,
    V_FRONT,
    FrontShape,
)
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    PaperError,
    Seam,
    Sheet,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_EASED = 0.6
"""The tape along each half of the back's edge is so much shorter, cm (1.8: a low back
edge, at the least)."""


class HalterNeck(Enum):
    """Shape of the front between its straps."""

    V = "V"
    ROUND = "round"

    @property
    def front(self) -> FrontShape:
        return FrontShape.V if self is HalterNeck.V else FrontShape.SCOOP


class Halter(Feature):
    """Front held behind the neck, bare shoulders and upper back."""

    kind: Literal["halter"] = "halter"
    title: ClassVar[str] = "Halter"
    sentence: ClassVar[str] = (
        "A [halter], {shape} in front and {depth} deep, hangs from a band {strap} wide "
        "behind the neck; the back is cut away to {back} below the bust line."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("depth", ("F",), ("neck", "cf"), (0.0, 1.0)),
        Pin("back", ("B",), ("neck", "cb"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "strap": ("F.shoulder",),
        "dw": ("F.shoulder",),
        "cn": ("F.armhole",),
        "ur": ("F.armhole",),
        "neck front": ("F.armhole",),
        "nh": ("HN.band upper",),
        "lap n": ("HN.nape",),
    }
    pieces: ClassVar[tuple[About, ...]] = (About(HALTER_BAND, Place.STRAP),)
    seams: ClassVar[Mapping[str, str]] = {
        "S63": "strap of a halter to its band",
        "S64": "band of a halter, bagged out",
        "S65": "facing of a halter's strap, to the band; a lining has LE5 there",
    }
    neck_ends: ClassVar[tuple[NeckEnd, ...]] = (
        NeckEnd("depth", "cf", ("F",)),
        NeckEnd("back", "cb", ("B",)),
    )
    gives: ClassVar[frozenset[str]] = frozenset(
        {"neckline", "back neck", "armhole", "lined arm", "sleeveless", "halter"}
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a halter is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": "a halter has its own armhole; leave the other off",
        "neckline": "an order has one front neckline",
        "back neck": "the back of a halter is cut away; leave its neckline off",
        "front panel seam": "a halter is cut from a front in one piece; take a side "
        "dart in place of the princess line",
        "back panel seam": "the back of a halter is in one piece; take a back waist "
        "dart in place of the princess line",
        "upper bust dart": "the dart would lie in the edge that is cut away; leave it "
        "at the side or lead it to the waist",
        "front yoke": "a halter has no shoulder for a yoke",
        "back yoke": "a halter has no shoulder for a yoke",
        "empire seam": "an empire seam is not yet cut through a halter",
        "open back": "the back of a halter is cut away already",
    }

    shape: HalterNeck = HalterNeck.V
    strap_taken: bool = False
    """Take the band's length from NN, nape over the neck to the bust point."""

    strap: Annotated[
        Length | None,
        Number(
            "strap",
            "strap",
            "width of the strap and of the band behind the neck",
            SRC,
            4.0,
            1.625,
            3.2,
            9.0,
            (3.5, 6.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "dw",
            "dw",
            "strap from the neck point",
            SRC,
            0.5,
            0.25,
            0.0,
            4.0,
            (0.0, 2.0),
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number("Df", "Df", "depth of the front neck", SRC, low=3.0, high=30.0),
    ] = None
    contour: Annotated[
        Length | None,
        Number(
            "cn",
            "cn",
            "contour of the front armhole, sent to the bust dart",
            "transformations 1.8",
            low=0.0,
            high=MOST_FOLDED,
        ),
    ] = None
    raised: Annotated[
        Length | None,
        Number("ur", "ur", "underarm raised", SRC, 1.25, 0.5, 0.0, 2.5, (1.0, 1.5)),
    ] = None
    lap: Annotated[
        Length | None,
        Number(
            "lap_n", "lap n", "overlap of the band at the nape", SRC, 2.5, 1.0, 1.0, 5.0
        ),
    ] = None
    back: Annotated[
        Length | None,
        Number(
            "bt",
            "bt",
            "upper edge of the back below the bust line",
            SRC,
            2.0,
            0.75,
            -2.0,
            7.0,
            (0.0, 4.0),
        ),
    ] = None

    def provides(self) -> frozenset[str]:
        return self.gives | ({V_FRONT} if self.shape is HalterNeck.V else set())

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, HALTER, BY_NN if self.strap_taken else BY_NECK)

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers; and the blade is cut away, so the shoulder has no dart."""
        yield from super().given(unit)
        tilt = 12.0 if self.shape.front in TILTED else 0.0
        for key, symbol, name, kind, value in (
            ("tau", "τ", "tilt of the neck at the shoulder", Kind.ANGLE, tilt),
            ("sd", "sd", "back shoulder dart", Kind.LENGTH, 0.0),
        ):
            yield Given(key, symbol, name, kind, value, Hand.DEFAULT, SRC)

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.SHOULDER, "the strap", mark_strap),
            Stage(Rank.NECK, "the front neck", self._neck),
            Stage(Rank.ARMHOLE, "the halter cut away", cut_both),
            Stage(Rank.CONTOUR, "the armhole drawn in", draw_in),
            Stage(Rank.CLOSURE, "the band behind the neck", draw_band),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return halter_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return halter_joints(sheet)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {HALTER_BAND: Cuts("4 (2 pairs)", 4, ("shell", "interlining"))}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "for the upper edge of the back, a little shorter than each half",
            length=sheet.length("B", "neck") - _EASED,
        )
        yield Notion(
            Article.TAPE,
            2,
            "for the armholes",
            length=sheet.length("F", "armhole"),
        )
        yield Notion(Article.HOOK, 2, "for the band at the nape")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        back, arm = sheet.length("B", "neck") - _EASED, sheet.length("F", "armhole")
        yield Operation(
            Work.STAY,
            "Tape the armholes and the upper edge of the back",
            (
                f"The armholes {fmt(arm)}, flat; each half of the back {fmt(back)}, "
                "the edge eased to it so that it does not stand off.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * (arm + back),
            task=Task.STAY,
        )
        yield Operation(
            Work.ON_EDGE,
            "Make the band and sew it to the straps",
            (
                "Each half right sides together round its long edges and its end at "
                "the nape; turn and press.",
                "Try it on before the straps are sewn: from strap to strap the band "
                f"is {fmt(2 * n.nh)} long.",
            ),
            seams=("S63", "S64"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="flat, the seam on the edge",
            task=Task.BAG,
            count=2.0,
        )
        yield Operation(
            Work.FASTEN,
            "Sew the hooks and eyes to the band",
            (f"Two at the nape, its ends lapped by {fmt(n.lap_n)}.",),
            stitch=Stitch.HAND,
            task=Task.HOOK,
            count=2.0,
            hazards=(Hazard.SMALL_PART,),
        )

    # -- drafting ----------------------------------------------------------------------
    def _neck(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        c = d.found(
            "C",
            Point(n.X, d["hf"].y + n.Df),
            "centre of the front neck",
            amounts=(("down from the level of hf", "Df"),),
            detail="on the centre front line",
        )
        p, slope, shape = d["Nf′"], n.sigma_f_new - n.tau, self.shape.front
        if c.y - p.y < 2.5:
            raise PaperError("the front neck is too shallow: make it (Df) deeper")
        d.draw(
            "neck front",
            FRONT_CURVES[shape](p, c, inward_front(slope), slope, 0.0),
            f"{self.shape.value} neck of the halter",
            frm=("Nf′", "C"),
            detail=HOW_FRONT[shape],
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return halter_findings(n, sheet)

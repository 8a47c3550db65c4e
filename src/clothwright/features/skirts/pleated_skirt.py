"""Skirt pleated all round: knife or box pleats stitched down to the hip, the waist
taken in pleat by pleat (transformations §10)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About, Place
from clothwright.features.base import (
    ONE_BLOCK,
    Cuts,
    Feature,
    Number,
    Rank,
    Stage,
    Words,
)
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import skirt_hem
from clothwright.features.skirts.about import GORE, GORE_FACING
from clothwright.features.skirts.circle_skirt import ROUND_WAIST, fits_cloth
from clothwright.features.skirts.gore_seams import gore_joints, gore_seams, pleat_joints
from clothwright.features.skirts.gored_skirt import GORED
from clothwright.features.skirts.pleated_skirt_drawing import (
    SEAM,
    draw_closed,
    lay_open,
    pleats_of,
)
from clothwright.features.skirts.pleated_skirt_rules import (
    BOX,
    COUNTED,
    KNIFE,
    PLEATED,
    SRC,
    Panels,
)
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length


class Shape(Enum):
    """How the pleats lie."""

    KNIFE = "knife pleats"
    """All one way."""

    BOX = "box pleats"
    """Away from each other; where they meet, inverted pleats lie between them."""


class PleatedSkirt(Feature):
    """Skirt pleated all round."""

    kind: Literal["pleated skirt"] = "pleated skirt"
    title: ClassVar[str] = "Pleated skirt"
    sentence: ClassVar[str] = (
        "A skirt in {shape} about {face} wide all [round], {length} long from the "
        "waist, of {panels} panels."
    )
    page: ClassVar[int] = 0
    pieces: ClassVar[tuple[About, ...]] = (
        About(GORE, Place.PANEL, ("panel", "gore"), edges={"hem": skirt_hem}),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S37": "seam of the gores or panels of a skirt",
        "S54": "pleats of a skirt, stitched down",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "skirt block", "shaped skirt", "waist", "pleated hem"}
    )
    clashes: ClassVar[dict[str, str]] = {
        **ONE_BLOCK,
        "hem finish": "the hem of a pleated skirt is turned up; leave the flounce or "
        "the godets off",
        "pleats": "this skirt is pleated all round already; leave the other pleat off",
    }
    makes_up: ClassVar[dict[str, str]] = StraightSkirt.makes_up

    shape: Shape = Shape.KNIFE
    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            SRC,
            60.0,
            24.0,
            30.0,
            125.0,
            (40.0, 100.0),
        ),
    ] = None
    face: Annotated[
        Length | None,
        Number(
            "pv0",
            "pv wanted",
            "wanted face of a pleat at the hip",
            SRC,
            4.0,
            1.5,
            1.5,
            20.0,
            (2.0, 12.0),
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number("pu", "pu", "depth folded under", SRC, low=1.0, high=15.0),
    ] = None
    gap: Annotated[
        Length | None,
        Number("pg", "pg", "between box pleats", SRC, None, None, 0.0, 20.0),
    ] = None
    stitched: Annotated[
        Length | None,
        Number(
            "p_down",
            "p down",
            "pleats stitched down, from the waist",
            SRC,
            low=3.0,
            high=40.0,
        ),
    ] = None
    hip_ease: Annotated[
        Length | None,
        Number("Eh", "Eh", "ease at the hip", SRC, 5.0, 2.0, 0.0, 16.0, (4.0, 6.0)),
    ] = None
    waist_ease: Annotated[Length | None, StraightSkirt.numbers()["waist_ease"]] = None
    panels: Panels = Panels.FOUR

    def said(self) -> str:
        if self.shape is Shape.BOX and self.gap:
            return f"{self.sentence[:-1]}; the pleats lie {{gap}} apart."
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        shape = KNIFE if self.shape is Shape.KNIFE else BOX
        return (ROUND_WAIST, GORED, PLEATED, shape, COUNTED[self.panels])

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.BLOCK, "the panel as it lies", self._close),
            Stage(Rank.LAID_OPEN, "the pleats", self._lay_open),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return gore_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return (*gore_joints(sheet), *pleat_joints(sheet))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        n = self.panels.count
        out = {GORE: Cuts(f"{n}", n), f"L.{GORE}": Cuts(f"{n}", n, ("lining",))}
        if GORE_FACING in sheet.pieces:
            out[GORE_FACING] = Cuts(f"{n}", n, ("shell", "interlining"))
        return out

    def _close(self, d: Drafting) -> None:
        draw_closed(d, box=self.shape is Shape.BOX)

    def _lay_open(self, d: Drafting) -> None:
        lay_open(d, box=self.shape is Shape.BOX)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        folds = 2 if self.shape is Shape.BOX else 1
        yield (
            f"Pleats: {round(n.pn)} to a panel, each {fmt(n.pv)} wide and {fmt(n.pu)} "
            "deep. Fold on the solid line, lay it to the dashed one as the arrow "
            f"points, and stitch down to {fmt(n.p_down)} below the waist; each fold "
            f"takes {fmt(n.pt / folds)} more at the waist than at the hip."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.STUD, 1, "for the pleat over the zip")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        folds = n.pn * n.gores * (2 if self.shape is Shape.BOX else 1)
        yield Operation(
            Work.READY,
            "Hem the panels",
            (
                "Before the pleats are pressed in: turned up once, its raw edge "
                "neatened first, and felled by hand.",
            ),
            edges=finished_edges(sheet, (GORE,), "hem"),
            stitch=Stitch.HAND,
            seam_type=SeamType.HEM_ONCE,
            neatened=1,
            task=Task.HEM,
        )
        yield from pleat_operations(
            sheet,
            (
                "Baste every fold onto its placement line from waist to hem and press.",
                f"Stitch down to {fmt(n.p_down)} below the waist, but for the pleat "
                "over the zip, which a press stud holds.",
            ),
            n.p_down * folds,
            folds,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        piece = sheet.piece(GORE)
        waist = sum(e.length for e in piece.edges if e.name.startswith("waist"))
        off = waist * n.gores - n.W - n.Ew
        if abs(off) > 0.1:
            yield Finding(
                "K1",
                Severity.REFUSE,
                f"The waist of the pleated panels together is off by {off:.1f} cm.",
                "Ew",
                "Measure W and H again.",
                {"off": off},
            )
        box = self.shape is Shape.BOX
        yield from pleat_findings(n, n.pv, n.pt, box=box)
        room = n.gores * pleats_of(n, box=box).width_at(n.WHH) - n.HH
        if room < 1.0:
            yield Finding(
                "K8",
                Severity.WARN,
                f"Over the high hip (HH) the pleats leave {room:.1f} cm of room.",
                "HH",
                "Measure HH and WHH again, or give the hip more ease (Eh).",
                {"room": room},
            )
        yield from fits_cloth(n, sheet)


def pleat_findings(
    n: Numbers, face: float, taken: float, *, box: bool
) -> Iterable[Finding]:
    """A pleat neither opens to the waist nor lies over its neighbours."""
    if taken < 0:
        yield Finding(
            "PL1",
            Severity.WARN,
            f"The waist is wider than the hip: each pleat opens by {-taken:.1f} cm.",
            "pv0",
            "Measure W and H again.",
            {"taken": taken},
        )
    most = face / 2 if box else face
    if n.pu > most + 0.05:
        yield Finding(
            "PL2",
            Severity.WARN,
            f"The pleats are folded {n.pu:.1f} cm under and {most:.1f} cm has room: "
            "they lie over each other.",
            "pu",
            "Fold less under (pu), or choose wider pleats.",
            {"pu": n.pu, "room": most},
        )
    if n.p_down > n.WH + 0.05:
        yield Finding(
            "PL3",
            Severity.NOTE,
            "The pleats are stitched down below the hip, where they give no room yet.",
            "p down",
            "End the stitching at the hip.",
            {"p_down": n.p_down, "WH": n.WH},
        )


def pleat_operations(
    sheet: Sheet,
    says: tuple[str, ...],
    stitched: float,
    count: float,
    work: Work = Work.READY,
) -> Iterable[Operation]:
    """So many pleats laid and stitched down, `stitched` cm in all."""
    codes = tuple(s.code for s in sheet.seams if s.code.startswith(SEAM))
    yield Operation(
        work,
        "Lay the pleats",
        says,
        seams=codes,
        stitch=Stitch.LOCK,
        length=stitched,
        press="along the folds, over strips of paper",
        task=Task.PLEAT,
        count=count,
    )

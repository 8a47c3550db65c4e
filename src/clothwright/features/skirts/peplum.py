"""The peplum: a circle segment, in panels, or gathered (first garment 13).

Each half's share of the circle is its share of the bodice's waist, so that the side
seams and the panel seams meet. The numbers are in `peplum_rules`, the pieces in
`peplum_pieces`.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import (
    Feature,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
    useless,
)
from clothwright.features.chains import Chains
from clothwright.features.cloth import widest_of
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation
from clothwright.features.skirts.about import (
    HANGING,
    HANGING_SEAMS,
    ONE_HANGS,
    PANEL_SEAMS,
)
from clothwright.features.skirts.hanging_seams import (
    hanging_joints,
    hanging_panels,
    hanging_side,
)
from clothwright.features.skirts.peplum_pieces import (
    BackEnd,
    closed_end,
    draw_circle,
    draw_gathered,
    draw_panels,
)
from clothwright.features.skirts.peplum_rules import (
    AT_EDGE,
    FLARED,
    GATHERED,
    PEPLUM,
    TO_CENTRE,
    clearance,
)
from clothwright.features.skirts.peplum_sewing import (
    behind_opening,
    gathered_in,
    peplum_operations,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 13"

NARROW_CLOTH = 90.0
"""Every dress cloth is at least this wide, cm (common practice)."""


BOTH_GATHERED = {
    "laid waist dart": "what is gathered hangs on a plain waist, not where the bust "
    "dart is gathered too: have it flared, or lead the dart to the waist as a dart",
    "front tucks": "what is gathered hangs on a plain waist, not where tucks are laid "
    "in front too: have it flared, or leave the tucks off",
    "laid back dart": "what is gathered hangs on a plain waist, not where the back "
    "waist dart is gathered too: have it flared, or take the dart up as a dart",
}
"""What a gathered peplum or skirt does not allow beside it."""


class Cut(Enum):
    """How the peplum is cut."""

    CIRCLE = "flared"
    """A segment of a circle, front and back."""

    PANELLED = "in panels"
    """The same, divided where the princess lines meet the waist."""

    GATHERED = "gathered"
    """Straight, gathered into the waist."""


class Ends(Enum):
    """Where the back peplum ends."""

    AT_EDGE = "at the edges"
    """Where the bodice ends."""

    TO_CENTRE = "to the centre back"
    """On behind the opening to the centre back."""


class Peplum(Feature):
    """Peplum at the waist seam."""

    kind: Literal["peplum"] = "peplum"
    title: ClassVar[str] = "Peplum"
    sentence: ClassVar[str] = (
        "The [peplum] is {cut}, {length} long and {fullness} of a full circle; it ends "
        "{ends}."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("PF", "PFC"), ("hem", "cf"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "f": ("PF.hem", "PFS.hem"),
        "by full": ("PF.hem", "PFS.hem"),
        "r": ("PF.waist", "PFC.waist"),
        "g": ("PF.waist", "PFC.waist"),
        "lap": ("PB.open", "PBC.cb"),
    }
    pieces: ClassVar[tuple[About, ...]] = HANGING
    seams: ClassVar[Mapping[str, str]] = {
        **HANGING_SEAMS,
        **PANEL_SEAMS,
    }
    gives: ClassVar[frozenset[str]] = frozenset({"skirt", "plain hem"})
    needs: ClassVar[dict[str, str]] = {"waist seam": "a peplum needs a waist seam"}
    clashes: ClassVar[dict[str, str]] = {"skirt": ONE_HANGS}

    length: Annotated[
        Length | None,
        Number(
            "L", "L", "length of the peplum", _SRC, 15.0, 6.0, 2.0, 60.0, (8.0, 25.0)
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "f",
            "f",
            "share of a full circle",
            _SRC,
            0.5,
            None,
            0.1,
            1.75,
            (0.25, 1.0),
            Kind.RATIO,
        ),
    ] = None
    bias_yield: Annotated[
        Length | None,
        Number(
            "by_full",
            "by full",
            "bias yield of a full circle",
            f"{_SRC}.1.1",
            0.6,
            0.25,
            0.0,
            2.0,
        ),
    ] = None
    gathers: Annotated[
        Ratio | None,
        Number(
            "g",
            "g",
            "gathered width to finished width",
            f"{_SRC}.3",
            1.6,
            None,
            1.1,
            3.0,
            (1.3, 2.5),
            Kind.RATIO,
        ),
    ] = None
    underlap: Annotated[
        Length | None,
        Number(
            "lap_P",
            "lap",
            "underlap of a peplum that runs on to the centre back",
            f"{_SRC}.4",
            2.5,
            1.0,
            1.5,
            5.0,
        ),
    ] = None
    cut: Cut = Cut.CIRCLE
    ends: Ends = Ends.AT_EDGE

    def said(self) -> str:
        if self.cut is Cut.GATHERED:
            return (
                "The [peplum] is {cut}, {length} long and {gathers} times its waist; "
                "it ends {ends}."
            )
        return self.sentence

    def provides(self) -> frozenset[str]:
        return self.gives | (
            {"closed peplum"} if self.ends is Ends.TO_CENTRE else {"peplum at edges"}
        )

    def forbids(self) -> dict[str, str]:
        return {**self.clashes, **(BOTH_GATHERED if self.cut is Cut.GATHERED else {})}

    def wants(self) -> dict[str, str]:
        if self.ends is Ends.TO_CENTRE:
            return {
                **self.needs,
                "panel behind": "a peplum that runs on behind the opening needs the "
                "panel behind it",
            }
        return dict(self.needs)

    def tables(self) -> tuple[RuleTable, ...]:
        return (
            PEPLUM,
            GATHERED if self.cut is Cut.GATHERED else FLARED,
            AT_EDGE if self.ends is Ends.AT_EDGE else TO_CENTRE,
        )

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SKIRT, "the peplum", self._draft),)

    def _draft(self, d: Drafting) -> None:
        d.part = "peplum"
        if not has_open_edges(d.sheet):
            end = closed_end(d.sheet)
        elif self.ends is Ends.TO_CENTRE:
            end = BackEnd("open", on=d.n.x_back, lap=d.n.lap_P)
        else:
            end = BackEnd("open")
        if self.cut is Cut.GATHERED:
            draw_gathered(d, end)
        else:
            draw_circle(d, end)
            if self.cut is Cut.PANELLED:
                draw_panels(d, end)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return (hanging_side(t, n), *hanging_panels(t, n))

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return hanging_joints(sheet)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        if self.ends is Ends.TO_CENTRE:
            yield (
                "The peplum is hooked at the centre back (crosses). "
                f"{behind_opening(n, fmt)}"
            )
        elif has_open_edges(sheet):
            yield "The waist end of the back edges is hooked (cross on the peplum)."
        if self.cut is Cut.GATHERED:
            yield gathered_in(n, fmt)
        code, wide = widest(sheet)
        if wide > NARROW_CLOTH:
            yield (
                f"The peplum needs cloth of {fmt(wide)} between the selvedges "
                f"({sheet.piece(code).name.lower()})."
            )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if self.ends is Ends.TO_CENTRE:
            yield Notion(Article.HOOK, 2, "for the peplum at the centre back")
        elif has_open_edges(sheet):
            yield Notion(Article.HOOK, 1, "for the waist end of the back edges")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        hooks = sum(notion.count for notion in self.notions(n, sheet))
        return peplum_operations(
            n,
            sheet,
            fmt,
            gathered=self.cut is Cut.GATHERED,
            underlapped=self.ends is Ends.TO_CENTRE,
            hooks=hooks,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from self._unused()
        if self.cut is not Cut.GATHERED and n.r < 5:
            yield Finding(
                "Q1",
                Severity.WARN,
                f"The peplum's waist arc is very tight, {n.r:.1f} cm in radius.",
                "r",
                "Choose a smaller share of a circle.",
                {"r": n.r},
            )
        yield from clearance(n, gathered=self.cut is Cut.GATHERED)
        code, wide = widest(sheet)
        if "Cw" in n and wide > n.Cw:
            yield Finding(
                "Q3",
                Severity.WARN,
                f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; "
                f"the cloth is {n.Cw:.1f} cm between its selvedges.",
                code,
                "Cut it in panels, or seam the cloth, but never at the centre front.",
                {"wide": wide, "cloth": n.Cw},
            )

    def _unused(self) -> Iterable[Finding]:
        """Numbers of the order that this peplum has no use for."""
        gathered = self.cut is Cut.GATHERED
        fields = ["fullness", "bias_yield"] if gathered else ["gathers"]
        fields += ["underlap"] if self.ends is Ends.AT_EDGE else []
        so = f"A peplum that is {self.cut.value} and ends {self.ends.value}"
        to_do = "Leave it out, or cut the peplum another way."
        return useless(self, fields, so, to_do)


def has_open_edges(sheet: Sheet) -> bool:
    """True when the back is open down to the waist, so that the peplum is too."""
    return any(p.has("slant") for p in sheet.pieces.values())


def widest(sheet: Sheet) -> tuple[str, float]:
    """The peplum's piece that takes most of the cloth's width, and how much, cm."""
    return widest_of(p for c, p in sheet.pieces.items() if c.startswith("P"))

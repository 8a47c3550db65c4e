"""Elastic in a casing at the waist of a gathered skirt, cut in one with it and turned
down (transformations §8)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path, Vector, shift
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "transformations §8"

ROOM = 0.4
"""A casing is so much wider than its elastic, cm (0.3 to 0.6)."""

HIP_ROOM = 2.0
"""What passes the hip is so much wider than it, cm."""

LAPPED = 2.0
"""The ends of the elastic lap by so much, cm (common practice, no source)."""

ELASTIC = RuleTable("elastic waist")


@ELASTIC.rule(
    "casing",
    "depth of the casing below the fold",
    source=_SRC,
    key="casing",
    formula="width of the elastic and 0.4 cm",
)
def _casing(elastic_w: float) -> float:
    return elastic_w + ROOM


@ELASTIC.rule(
    "elastic",
    "elastic round the waist",
    source=_SRC,
    key="elastic",
    formula="W less 5 to 12 in 100",
    low=30.0,
    high=200.0,
)
def _elastic(W: float, elastic_less: float) -> float:
    return W * (1 - elastic_less / 100)


def _top(piece: Piece, edge: Edge) -> Role | None:  # noqa: ARG001
    return Role.CASING if edge.kind is EdgeKind.FINISHED else None


class ElasticWaist(Feature):
    """Waist drawn in by elastic, without band or zip."""

    kind: Literal["elastic waist"] = "elastic waist"
    title: ClassVar[str] = "Elastic waist"
    sentence: ClassVar[str] = (
        "It is pulled on: an [elastic] {width} wide and {shorter} per cent shorter "
        "than the waist runs in a casing turned down from the top."
    )
    shows: ClassVar[Shown] = {"casing": ("SF.waist",), "g": ("SF.waist",)}
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, edges={"waist": _top}) for code in (FRONT, BACK)
    )
    gives: ClassVar[frozenset[str]] = frozenset(
        {"waist finish", "skirt opening", "elastic waist"}
    )
    needs: ClassVar[dict[str, str]] = {
        "gathered waist": "an elastic waist must pass the hip unopened, without "
        'darts; take a "gathered skirt"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only",
        "skirt opening": "an elastic waist is pulled on and needs no zip; leave it off",
    }

    width: Annotated[
        Length | None,
        Number(
            "elastic_w",
            "we",
            "width of the elastic",
            _SRC,
            3.0,
            1.25,
            0.6,
            8.0,
            (1.5, 5.0),
        ),
    ] = None
    shorter: Annotated[
        Ratio | None,
        Number(
            "elastic_less",
            "less",
            "elastic shorter than the waist, per cent",
            _SRC,
            8.0,
            None,
            0.0,
            25.0,
            (5.0, 12.0),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (ELASTIC,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the elastic waist", _draft),)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:  # noqa: ARG002
        yield Notion(
            Article.ELASTIC,
            1,
            "for the waist, its ends lapped",
            length=n.elastic + LAPPED,
            size=n.elastic_w,
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,  # noqa: ARG002
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            f"The top folds in along the waist line, {fmt(n.casing)} deep; its raw "
            "edge is turned in."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,  # noqa: ARG002
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.BAND,
            "Turn the casing down and draw the elastic in",
            (
                "Press the raw edge in, fold the top down along the waist line and "
                "stitch close to its lower edge, but for a hand's width at a side.",
                f"Draw in {fmt(n.elastic + LAPPED)} of elastic, lap its ends by "
                f"{fmt(LAPPED)} and stitch them crosswise; close the casing, spread "
                "the gathers, and stitch through at the sides.",
            ),
            edges=(Run(FRONT, "waist"), Run(BACK, "waist")),
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.BAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        girth = 2 * (sheet.length(FRONT, "waist") + sheet.length(BACK, "waist"))
        if girth < n.H + HIP_ROOM - 1e-6:
            yield Finding(
                "EW1",
                Severity.REFUSE,
                f"The casing is {girth:.1f} cm round and does not pass the hip: "
                f"{n.H + HIP_ROOM:.1f} cm is the least.",
                "g",
                "Make the skirt fuller (g).",
                {"casing": girth, "H": n.H},
            )
        if 2 * n.elastic < n.H + HIP_ROOM:
            yield Finding(
                "EW2",
                Severity.WARN,
                f"The elastic of {n.elastic:.1f} cm must stretch to more than twice "
                f"its length to pass the hip of {n.H:.1f} cm.",
                "less",
                "Cut it less short, or try it on first.",
                {"elastic": n.elastic, "H": n.H},
            )


def _draft(d: Drafting) -> None:
    """Raise the top of front and back by the depth of the casing."""
    n = d.n
    sheet = d.sheet
    drawn: list[Path] = []
    for code in (FRONT, BACK):
        waist = sheet.edge(code, "waist").path
        up = waist.moved(shift(Vector(0.0, -n.casing)))
        sheet = redraw(sheet, code, ["waist"], [Edge("waist", up, EdgeKind.FINISHED)])
        fold = InnerLine("waist line, folded", waist)
        sheet = sheet.put(sheet.piece(code).with_lines(fold))
        drawn.append(up)
    d.part = "skirt front"
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{FRONT}.waist",
        "top of the casing, on front and back",
        amounts=(("above the waist line, which is its fold", "casing"),),
        lines=tuple(drawn),
    )

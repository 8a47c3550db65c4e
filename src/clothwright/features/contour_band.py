"""Contour waistband: the top of the skirt with its darts closed, cut off as a shaped
band (transformations §8)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT, waist_names
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.closed_top import below, shortest_dart, top_of
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation
from clothwright.features.skirt_sewing import contour_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, PaperError, Sheet, Verb, redraw
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations §8"

BANDS = {FRONT: "WCF", BACK: "WCB"}
"""Code of the band of each piece of the skirt."""

_NAMES = {FRONT: "Front band", BACK: "Back band"}

_LEFT_OF_DART = 2.5
"""Least that is left of a dart below the band, cm; what is shorter ends in a bubble
(common practice)."""


class ContourBand(Feature):
    """Shaped band, cut off the top of the skirt."""

    kind: Literal["contour waistband"] = "contour waistband"
    title: ClassVar[str] = "Contour waistband"
    sentence: ClassVar[str] = (
        "The top of the skirt is a [shaped band], {depth} deep, its darts closed."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"waist finish", "band"})
    needs: ClassVar[dict[str, str]] = {
        "fitted skirt": "a contour waistband is cut off a straight skirt"
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only"
    }

    depth: Annotated[
        Length | None,
        Number(
            "h_contour",
            "hc",
            "depth of the shaped band",
            _SRC,
            5.0,
            2.0,
            3.0,
            10.0,
            (4.0, 8.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the shaped band", _draft),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        both = ("shell", "interlining")
        return {
            code: Cuts("2 on fold", 2, both)
            if sheet.piece(code).fold
            else Cuts("4 (2 pairs)", 4, both)
            for code in BANDS.values()
            if code in sheet.pieces
        }

    def notes(
        self,
        n: Numbers,  # noqa: ARG002
        sheet: Sheet,  # noqa: ARG002
        fmt: Callable[[float], str],  # noqa: ARG002
    ) -> Iterable[str]:
        yield (
            "The shaped band is its own facing: cut it twice, tape its upper edge, and "
            "run the zip up to it."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:  # noqa: ARG002
        yield Notion(Article.HOOK, 1, "above the zip")

    def operations(
        self,
        n: Numbers,  # noqa: ARG002
        sheet: Sheet,
        fmt: Callable[[float], str],  # noqa: ARG002
    ) -> Iterable[Operation]:
        return contour_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        least = shortest_dart(sheet)
        if least is not None and least < _LEFT_OF_DART:
            yield Finding(
                "F4",
                Severity.REFUSE if least < 1.0 else Severity.WARN,
                f"Below the shaped band (hc) only {least:.1f} cm of a dart is left.",
                "hc",
                "Make the band less deep, or the darts longer.",
                {"left": least, "hc": n.h_contour},
            )


def _draft(d: Drafting) -> None:
    """Trace the bands with the darts closed, then cut the skirt back to their foot."""
    n = d.n
    least = shortest_dart(d.sheet)
    for code, band in BANDS.items():
        d.part = "waistband"
        skirt = d.sheet.piece(code)
        piece = top_of(skirt, n.h_contour, band, _NAMES[code])
        foot = piece.edge("free")
        piece = piece.with_edges(
            Edge("foot of band", foot.path, EdgeKind.SEAM) if e is foot else e
            for e in piece.edges
        )
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            band,
            piece.name.lower(),
            amounts=(("deep", "h_contour"),),
            detail="the top of the skirt with the darts closed"
            if least is not None
            else "the top of the skirt",
        )
        sheet = d.sheet
        drawn = []
        for name in (e.name for e in skirt.edges if e.name in waist_names(2)):
            up, down = (e.path for e in (skirt.before(name), skirt.after(name)))
            line = below(skirt.edge(name).path, n.h_contour, up, down)
            if line is None:
                raise PaperError(
                    "the shaped band is deeper than the darts are long: make it less "
                    "deep"
                )
            sheet = redraw(sheet, code, [name], [Edge(name, line)])
            drawn.append(line)
        d.part = "skirt back" if code == BACK else "skirt front"
        d.lay(
            Verb.REDRAW,
            sheet,
            f"{code}.waist",
            f"upper edge of the {skirt.name.lower()}, below the band",
            amounts=(("below the waist", "h_contour"),),
            detail="along it, each dart cut back",
            lines=tuple(drawn),
        )

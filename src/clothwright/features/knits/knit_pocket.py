"""Patch pockets on a knit bodice or skirt (transformations §9)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import knit
from clothwright.blocks.knit_skirt import SKIRT
from clothwright.curves import Path, Point, Vector
from clothwright.features.about import About
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, Stitch
from clothwright.features.pockets.set_on import DEEP, SRC, SetBelow, Shape
from clothwright.features.pockets.set_on_drawing import BESIDE, HIP, Mouth, from_side
from clothwright.features.pockets.set_on_sewing import patch_sewn
from clothwright.features.skirts.pocket_drawing import OFF_CENTRE
from clothwright.paper import Drafting, PaperError, Piece, Sheet
from clothwright.rules import Numbers, Rule, RuleTable
from clothwright.units.fields import Length

_CP = "common practice, no source"

_HAND = 22.0
"""A mouth at the level of the hand lies so far below the waist, cm (§9: 22 to 28)."""

_HIP = 11.0
"""The mouth of a skirt's lies so far below its waist, cm (§9)."""

_ABOVE_HEM = 3.0
"""None comes nearer to the hem, cm (our own)."""

_CLEAR = _ABOVE_HEM + 1.5
"""By itself it ends so far above the level of the hem, which rises at the side, cm (our
own)."""

_STRIP = 2.5
"""A square of fusible behind each end of a mouth, cm (common practice, no source)."""

_SHORT = _HAND + 13.0
"""On a bodice that reaches no further below the waist it lies near the waist, cm (our
own)."""

_NAME = "mouth below the waist; above it when negative"


def _wide(quarter: float, beside: float) -> float:
    """Width of a pocket on a front whose half is so wide where it lies."""
    return min(13.0, quarter - beside - OFF_CENTRE - BESIDE)


def _level(title: str, hand: float, length: str) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "kd",
        "depth of the pocket, below its mouth",
        source=SRC,
        key="k_deep",
        formula="15/13 of its width",
        low=6.0,
        high=30.0,
    )
    def _deep(k_wide: float) -> float:
        return k_wide * DEEP

    wide = page.rule(
        "kw",
        "width of the mouth",
        source=SRC,
        key="k_wide",
        formula="13 cm, or what leaves 4 cm at the centre front",
        low=8.0,
        high=22.0,
    )
    says = f"{hand:g} cm, or so that it ends 4.5 cm above the hem"
    rule = page.rule(
        "kb", _NAME, source=SRC, key="k_down", formula=says, low=-25.0, high=40.0
    )
    if length == "L":

        @wide
        def _skirt_wide(q_waist: float, q_hip: float, k_side: float) -> float:
            return _wide((q_waist + q_hip) / 2, k_side)

        @rule
        def _on_skirt(L: float, k_deep: float) -> float:
            return min(hand, L - _CLEAR - k_deep)

    else:

        @wide
        def _top_wide(
            q_waist: float, q_hip: float, knit_below: float, k_side: float
        ) -> float:
            return _wide(q_waist if knit_below < _SHORT else q_hip, k_side)

        @rule
        def _on_top(knit_below: float, k_deep: float) -> float:
            return min(hand, knit_below - _CLEAR - k_deep)

    return page


ON_SKIRT = _level("patch pockets on a knit skirt", _HIP, "L")
ON_TOP = _level("patch pockets on a knit bodice", _HAND, "knit_below")

_N = SetBelow.numbers()


class KnitPocket(SetBelow):
    """A pair of patch pockets on the front of a knit bodice or skirt."""

    kind: Literal["knit pocket"] = "knit pocket"
    title: ClassVar[str] = "Patch pockets on a knit"
    sentence: ClassVar[str] = (
        "A patch [pocket] lies on the front at each side, {width} wide, {below} below "
        "the waist."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("knit front", "knit skirt"))
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "knit front": "these pockets lie on a knit bodice or skirt"
    }
    above_hem: ClassVar[float] = _ABOVE_HEM

    width: Annotated[Length | None, replace(_N["width"], cm=None, inch=None)] = None
    below: Annotated[
        Length | None,
        replace(_N["below"], name=_NAME, cm=None, inch=None, low=-25.0),
    ] = None
    beside: Annotated[Length | None, replace(_N["beside"], cm=3.0, inch=1.25)] = None

    @property
    def made(self) -> Shape:
        return Shape.PATCH

    @property
    def _said(self) -> str:
        return "a pair, on the front"

    def tables(self) -> tuple[RuleTable, ...]:
        return (ON_SKIRT,)

    def rewritten(
        self, rules: Mapping[str, Rule], given: Collection[str]
    ) -> Mapping[str, Rule]:
        """On a bodice the hand's level counts, and its own length."""
        if "L" in rules or "L" in given:
            return {}
        return {k: r for k, r in ON_TOP.rules.items() if k not in given}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.STRIP,
            4,
            "behind the ends of the pocket mouths",
            length=_STRIP,
            size=_STRIP,
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        plain = patch_sewn(self.kit, sheet, self.many, fmt)
        yield replace(
            plain,
            says=(
                f"Fuse a square of {fmt(_STRIP)} on the wrong side of the front behind "
                "both ends of each mouth.",
                *plain.says,
                "Do not stretch the front: a narrow zigzag gives with it.",
            ),
            stitch=Stitch.ZIGZAG,
        )

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(knit.FRONT if knit.FRONT in sheet.pieces else SKIRT)

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, in from the side. Raises PaperError."""
        front, n = self._on(d.sheet), d.n
        top = front.code == knit.FRONT
        d.part = "knit front" if top else "knit skirt"
        centre_x = n.X if top else 0.0
        level = n.k_down + (n.yW + n.front_down if top else 0.0)
        across = Path.line(Point(-150.0, level), Point(150.0, level))
        hits = [across.at_length(s) for _, s in front.edge("side").path.meets(across)]
        if not hits:
            raise PaperError(
                "the mouth of the pocket (kb) lies beyond the side of the front: "
                "set it lower, or higher where it is below the hem"
            )
        s = d.found(
            "Pks",
            hits[0],
            "level of the pocket on the side",
            amounts=(("below the waist line", "k_down"),),
        )
        centre = Path.line(Point(centre_x, -50.0), Point(centre_x, level + 99.0))
        way = Vector(1.0 if top else -1.0, 0.0)
        return from_side(d, self.kit, front.code, s, way, centre)

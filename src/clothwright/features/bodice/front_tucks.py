"""Tucks down the front, beside the centre, from its upper edge to its foot, or stitched
part of the way and let go into fullness (transformations 1.2, 1.6, 10).

The front is slashed along the straight grain where a tuck is stitched, and what lies
towards the side is moved out by twice its depth. Folded, each edge of the tuck lies on
the edge beside it, so that it is cut as the folded paper shows. It is done when all
else is drafted: facing and lining are those of the plain front.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.torso_width import LAID_IN_TUCKS
from clothwright.curves import Path, Point, Vector
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.front_tucks_rules import FIRST, TUCKS
from clothwright.features.bodice.let_go_tucks import (
    Ends,
    end_level,
    feet_seams,
    foot_operations,
    gathered_in,
    rounded_feet,
)
from clothwright.features.bodice.tucked_seams import seams_with_tucks
from clothwright.features.grain import longest_line
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.tucked import (
    FOLD,
    OverEnd,
    crossed,
    opened,
    tuck_lines,
)
from clothwright.features.wholes import is_kept, keep_whole
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    InnerLine,
    LineKind,
    PaperError,
    Piece,
    Sheet,
    Size,
    Verb,
)
from clothwright.rules import Given, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 10"


class FrontTucks(Feature):
    """Tucks beside the centre front."""

    kind: Literal["front tucks"] = "front tucks"
    title: ClassVar[str] = "Tucks down the front"
    sentence: ClassVar[str] = (
        "Beside the centre front lie {count} [tucks] a half, {depth} deep and {apart} "
        "apart, the first {beside} from it."
    )
    shows: ClassVar[Shown] = dict.fromkeys(
        ("n tucks", "deep t", "apart t", "beside t"),
        ("FC.waist", "F.waist", "FC.hem", "F.hem"),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front tucks"})
    needs: ClassVar[dict[str, str]] = {
        "front panels": "tucks lie in the front of a bodice: add a front princess line "
        "or a side dart"
    }
    clashes: ClassVar[dict[str, str]] = {
        "cowl": "a cowl hangs on the bias, and tucks want the straight grain",
        "wrap": "the fronts of a wrap cross where the tucks would lie",
        "halter": "the front of a halter narrows to its band and leaves tucks no room",
        "tent": "a tent is spread out from the bust point already; leave the tucks or "
        "the tent off",
        "centre front seam": "below a bust dart at the centre front the grain turns, "
        "and tucks would not run down it; lead the dart elsewhere",
        "bust dart at the neck": "the bust dart opens in the neck, where the tucks "
        "begin; lead the dart elsewhere, or leave the tucks off",
    }

    count: Annotated[
        Ratio | None,
        Number(
            "tucks_f",
            "n tucks",
            "tucks of each half of the front",
            _SRC,
            4.0,
            low=1.0,
            high=20.0,
            kind=Kind.COUNT,
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number(
            "tuck_deep",
            "deep t",
            "depth of a tuck of the front",
            _SRC,
            0.3,
            0.125,
            0.2,
            2.0,
            (0.2, 1.0),
        ),
    ] = None
    apart: Annotated[
        Length | None,
        Number(
            "tuck_gap",
            "apart t",
            "from the fold of a tuck of the front to the next",
            _SRC,
            0.6,
            0.25,
            0.2,
            5.0,
        ),
    ] = None
    beside: Annotated[
        Length | None,
        Number(
            "tuck_first",
            "beside t",
            "first tuck of the front from the centre",
            _SRC,
            low=0.3,
            high=12.0,
        ),
    ] = None
    stitched: Annotated[
        Length | None,
        Number(
            "tuck_stitched",
            "sewn t",
            "from the upper edge, for which the tucks of the front are stitched",
            "transformations 1.6",
            low=2.0,
            high=80.0,
        ),
    ] = None
    """None for tucks that are stitched from edge to edge."""

    def said(self) -> str:
        if self.stitched is None:
            return self.sentence
        return (
            "Beside the centre front lie {count} [tucks] a half, {depth} deep and "
            "{apart} apart, stitched down for {stitched} and let go below."
        )

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **(_LET_GO if self.stitched is not None else {})}

    def tables(self) -> tuple[RuleTable, ...]:
        return (TUCKS,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield FIRST.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LAID_OPEN, "the tucks of the front", _draft),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        count = round(n.tucks_f)
        long = sum(
            k.path.length for k in _front(sheet).lines if k.name.startswith(FOLD)
        )
        let_go = "tuck_stitched" in n
        how_far = "from the upper edge to its mark" if let_go else "from edge to edge"
        yield Operation(
            Work.DART,
            "Sew the tucks of the front",
            (
                f"Fold each on its line and stitch {fmt(n.tuck_deep)} beside the fold, "
                f"{how_far}; begin at the centre.",
                "Fasten the thread where each is let go, and baste the upper ends flat."
                if let_go
                else "Baste them flat at both ends.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=2 * long,
            task=Task.PLEAT,
            count=2.0 * count,
            press="towards the side"
            + (", no further than they are stitched" if let_go else ""),
        )
        if let_go:
            yield from foot_operations(sheet, _front(sheet).code, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.tucks_f > 1 and n.tuck_gap < n.tuck_deep - 1e-6:
            yield Finding(
                "T1",
                Severity.REFUSE,
                f"The tucks of the front lie {n.tuck_gap:.1f} cm apart and are "
                f"{n.tuck_deep:.1f} cm deep: they would lie on each other.",
                "apart t",
                "Lay them further apart, or make them less deep (deep t).",
                {"apart": n.tuck_gap, "deep": n.tuck_deep},
            )


_LET_GO = {
    "laid waist dart": "the waist takes up the fullness of the tucks, or that of the "
    "bust dart: stitch the tucks to their foot, or lead the dart elsewhere",
}
"""What tucks that are let go do not allow beside them."""


def _front(sheet: Sheet) -> Piece:
    return sheet.piece("FC" if "FC" in sheet.pieces else "F")


def _draft(d: Drafting) -> None:
    n = d.n
    d.part = "front"
    deep, count = n.tuck_deep, round(n.tucks_f)
    piece = plain = _front(d.sheet)
    step = deep + n.tuck_gap
    places = [n.X - n.tuck_first - k * step for k in range(count)]
    tucks = [_ends(plain, x) for x in places]
    foot = end_level(tucks, n.tuck_stitched) if "tuck_stitched" in n else None
    for x in reversed(places):  # the outermost first: what lies inside does not move
        piece = _opened(piece, x, deep, let_go=foot is not None)
    moved = [x - 2 * k * deep for k, x in enumerate(places)]
    lines = [
        line
        for k, x in enumerate(moved)
        for line in tuck_lines(piece, k + 1, x, deep, foot)
    ]
    if foot is not None:
        piece = rounded_feet(piece, tucks, moved, deep)
        to_here = Path.line(Point(moved[-1] - 2 * deep, foot), Point(moved[0], foot))
        lines.append(InnerLine("front tucks, to here", to_here, LineKind.PLACEMENT))
    piece = piece.with_lines(*lines)
    piece = replace(piece, grain=longest_line(piece, Vector(0.0, -1.0)))
    before = (
        d.sheet if is_kept(d.sheet, plain.code) else keep_whole(d.sheet, plain.code)
    )
    below = feet_seams(before, plain.code, tucks) if foot is not None else ()
    laid = Path.line(Point(n.X, 0.0), Point(n.X - 2 * deep * count, 0.0))
    waists = {
        f"gathered {e}": before.edge(plain.code, e).path
        for e in ("waist", "waist side")
        if plain.has(e) and f"gathered {e}" not in before.lines
    }
    kept = before.drawn(**{LAID_IN_TUCKS: laid}, **_flanks(before, waists), **waists)
    sheet = kept.put(piece)
    if foot is not None:
        sheet = gathered_in(kept, sheet, plain, tucks)
    sheet = seams_with_tucks(kept, sheet, plain, places, {s.code for s in below})
    amounts: list[tuple[str, Size]] = [
        ("the first slash from the centre", "tuck_first"),
        ("each next from there", step),
        ("every slash opened by", 2 * deep),
    ]
    detail = "fold each tuck towards the side and cut its ends as the edges below"
    if foot is not None:
        amounts.append(("stitched down from the upper edge", "tuck_stitched"))
        detail = (
            "fold each tuck towards the side and cut its upper end as the edge below; "
            "measure its length on the first and square across; draw the foot in one "
            "line over the openings"
        )
    d.lay(
        Verb.SPREAD,
        sheet,
        piece.code,
        f"{plain.name.lower()} slashed along the straight grain at each tuck, and what "
        "lies outside moved out",
        amounts=amounts,
        detail=detail,
        lines=tuple(k.path for k in lines),
    )


def _flanks(sheet: Sheet, waists: Mapping[str, Path]) -> Mapping[str, Path]:
    """The waist of a side panel, which is a part of the front's as it is stitched."""
    if not waists or "FS" not in sheet.pieces or not sheet.piece("FS").has("waist"):
        return {}
    return {"gathered waist side": sheet.edge("FS", "waist").path}


def _ends(piece: Piece, x: float) -> Ends:
    """The two edges that a tuck runs between. Raises PaperError where it meets a dart,
    or more than two."""
    found = crossed(piece, x)
    darts = ("leg", "dart", "panel", "side")
    if len(found) != 2 or any(c.edge.name.startswith(darts) for c in found):
        raise PaperError(
            "a tuck of the front would cross a dart, a panel seam or the armhole, or "
            "lie in the band: make the tucks (n tucks) fewer or nearer to each other "
            "(apart t), or the first another distance from the centre (beside t)"
        )
    return found[0], found[1]


def _opened(piece: Piece, x: float, deep: float, *, let_go: bool) -> Piece:
    """The piece with a tuck at `x`. Raises PaperError where it has no room."""
    try:
        return opened(piece, x, deep, _ends(piece, x), let_go=let_go)
    except OverEnd:
        raise PaperError(
            "a tuck of the front would lie over the end of an edge: make the tucks "
            "(n tucks) fewer, or the first another distance from the centre "
            "(beside t)"
        ) from None

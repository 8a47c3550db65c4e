"""Pockets at the sides of a straight skirt, alone or of a dress: slanting from the
waist, or in the side seam (transformations §9)."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import FRONT
from clothwright.curves import Path, Point, turn
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, Work, tape_on
from clothwright.features.skirts.about import POCKET_SEAMS, hem_line
from clothwright.features.skirts.closed_top import closed_waist
from clothwright.features.skirts.pocket_drawing import (
    BAG,
    HIP_PIECE,
    OFF_CENTRE,
    bag_findings,
    hang_from_side,
    hung,
    in_seam,
    off_centre,
    pocket_seams,
    slant,
)
from clothwright.features.skirts.wrap_skirt_drawing import covered
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trouser_sewing import pocket_operations
from clothwright.features.wholes import keep_whole
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Piece, Run, Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §9"

DRESS_FRONT = "PF"
"""The skirt front of a dress."""

_ABOVE_HIP = 1.0
"""A slanting pocket ends so far above the hip line, cm (our own)."""

_BESIDE_DART = 0.8
"""A slanting pocket stays so far beside the nearest dart, cm (our own)."""

_HAND_AND = 4.0
"""A bag is half the hand's girth and so much wide, cm (§9)."""

AT_SIDE = RuleTable("pockets of a skirt")


@AT_SIDE.rule(
    "pz",
    "end of the pocket down the side, from the waist",
    source=_SRC,
    key="pk_end",
    formula="17 cm, but ending 1 cm above the hip",
    low=10.0,
    high=26.0,
)
def _end(WH: float) -> float:
    return min(17.0, WH - _ABOVE_HIP)


SLANTING = RuleTable("slanting pockets of a skirt")


@SLANTING.rule(
    "pt",
    "slanting pocket on the waist, from the side",
    source=_SRC,
    key="pk_top",
    formula="6 cm, but ending 0.8 cm beside the dart",
    low=2.0,
    high=12.0,
)
def _top(w_SF: float, nf_S: float) -> float:
    share = (1.0, 0.48, 0.3)[round(nf_S)]
    return min(6.0, share * w_SF - _BESIDE_DART)


_T = Pockets.numbers()


class SkirtPockets(Feature):
    """Two pockets at the sides of a skirt."""

    kind: Literal["skirt pockets"] = "skirt pockets"
    title: ClassVar[str] = "Pockets at the sides of a skirt"
    sentence: ClassVar[str] = "The [pockets] are {shape}, their bags {bag} deep."
    pieces: ClassVar[tuple[About, ...]] = (
        *(About(c, Place.POCKET, ("skirt front",)) for c in (HIP_PIECE, BAG)),
    )
    seams: ClassVar[Mapping[str, str]] = POCKET_SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"pockets"})
    needs: ClassVar[dict[str, str]] = {
        "pocket in the side": "these pockets lie at the sides of a straight skirt, "
        "alone or of a dress, or of a gathered skirt in one piece"
    }
    clashes: ClassVar[dict[str, str]] = {
        "side opening": "a zip in the left side leaves no pocket there; open the skirt "
        "at the centre back",
        "pockets": "a skirt has one pair of pockets at its sides",
    }

    shape: Shape = Shape.SEAM
    across: Annotated[
        Length | None,
        Number(
            "pk_top",
            "pt",
            "slanting pocket on the waist, from the side",
            _SRC,
            low=2.0,
            high=12.0,
        ),
    ] = None
    end: Annotated[Length | None, _T["end"]] = None
    begin: Annotated[
        Length | None,
        Number(
            "pk_begin",
            "pb",
            "mouth in the side seam, below the waist",
            _SRC,
            5.0,
            2.0,
            2.0,
            12.0,
            (4.0, 6.0),
        ),
    ] = None
    mouth: Annotated[Length | None, _T["mouth"]] = None
    bag: Annotated[Length | None, _T["bag"]] = None
    bag_width: Annotated[Length | None, _T["bag_width"]] = None

    def provides(self) -> frozenset[str]:
        slanting = {"slanting pockets"} if self.shape is Shape.SLANT else set()
        return self.gives | slanting

    def tables(self) -> tuple[RuleTable, ...]:
        slanting = (SLANTING,) if self.shape is Shape.SLANT else ()
        return (AT_SIDE, *slanting)

    def wants(self) -> Mapping[str, str]:
        if self.shape is Shape.SEAM:
            return self.needs
        why = (
            "a slanting pocket is caught in the waist of a straight skirt; on another "
            'choose shape = "in the side seam"'
        )
        return {**self.needs, "fitted skirt": why}

    def stages(self) -> tuple[Stage, ...]:
        draw = _slant if self.shape is Shape.SLANT else _in_seam
        return (Stage(Rank.CLOSURE, "the pockets", draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*pocket_seams(t, FRONT), *pocket_seams(t, DRESS_FRONT))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if HIP_PIECE in sheet.pieces:
            return {BAG: Cuts("2 (1 pair)", 2, ("lining",))}
        return {BAG: Cuts("4 (2 pairs)", 4, ("lining",))}

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return (Run(FRONT, "pocket"),) if self.shape is Shape.SLANT else ()

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        for run in self.taped(sheet):
            tape = sheet.length(run.piece, run.edge)
            yield Notion(Article.TAPE, 2, "for the pocket mouths", length=tape)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is Shape.SEAM:
            yield (
                f"Pockets: sew the bags to both side allowances, and the sides above "
                f"and below the mouth of {fmt(n.pk_mouth)} (notches)."
            )
            return
        yield (
            "Pockets: tape the slanting edge, face it with the bag, and lay the pocket "
            "back behind it from notch to notch, before the sides are sewn."
        )
        if sheet.piece(FRONT).has("dart centre"):
            yield "The bags' upper edges are drawn with the darts sewn."

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        for run in self.taped(sheet):
            tape = sheet.length(run.piece, run.edge)
            yield tape_on("pocket mouths", tape, 2, fmt, Work.STAY)
        yield from pocket_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from bag_findings(n, sheet, slant=self.shape is Shape.SLANT)
        centre = sheet.edge(_front(sheet), "waist").path.end.x
        yield from off_centre(sheet.piece(BAG), centre, "pw")
        yield from hand_findings(n, "pw")
        if self.shape is Shape.SLANT:
            yield from _reached(sheet)


def _reached(sheet: Sheet) -> Iterable[Finding]:
    """Of a wrap skirt, the right front does not cross the pocket of the left one
    (WX3)."""
    over = covered(sheet, sheet.points["Pa"])
    if over > 0.05:
        yield Finding(
            "WX3",
            Severity.REFUSE,
            f"The right front of the wrap lies {over:.1f} cm over the slanting pocket "
            "of the left one.",
            "wx S",
            f"Let the fronts cross (wx S) {over:.1f} cm less, or choose "
            'shape = "in the side seam".',
            {"over": over},
        )


def hand_findings(n: Numbers, symbol: str) -> Iterable[Finding]:
    """A bag wide enough for her hand (P3)."""
    least = n.HD / 2 + _HAND_AND if "HD" in n else 0.0
    if n.pk_wide < least - 0.05:
        yield Finding(
            "P3",
            Severity.WARN,
            f"The pocket bag is {n.pk_wide:.1f} cm wide; her hand wants "
            f"{least:.1f} cm.",
            symbol,
            f"Make the bag ({symbol}) wider.",
            {symbol: n.pk_wide, "hand": least},
        )


def _front(sheet: Sheet) -> str:
    return FRONT if FRONT in sheet.pieces else DRESS_FRONT


def _waist(front: Piece) -> Path:
    """The waist from the side, its darts closed, the side's stretch in its place."""
    path, first, _ = closed_waist(front)
    return path.moved(first.inverse())


def _slant(d: Drafting) -> None:
    d.part = "skirt front"
    front = d.sheet.piece(FRONT)
    waist = _waist(front)
    d.sheet = keep_whole(d.sheet, FRONT)
    lean = _lean(d, FRONT)
    top = _top_of_bag(d, waist, front.edge("side").path, lean)
    slant(d, FRONT, waist, top, "a slanting pocket", lean)


def _in_seam(d: Drafting) -> None:
    d.part = "skirt front"
    code = _front(d.sheet)
    side = d.sheet.edge(code, "side").length
    end = d.n.pk_begin + d.n.pk_mouth
    if d.n.pk_deep > side - 5.0:
        raise PaperError(
            f"the pocket bag (pd) reaches to {max(0.0, side - d.n.pk_deep):.1f} cm "
            "above the hem: make it less deep, or the skirt longer"
        )
    if end > side - 10.0:
        raise PaperError(
            "the mouth of the pocket (pb, pm) ends too near to the hem: make it higher"
        )
    if hung(d.n):
        hang_from_side(d, code)
        return
    front = d.sheet.piece(code)
    waist = _waist(front)
    lean = _lean(d, code)
    top = _top_of_bag(d, waist, front.edge("side").path, lean)
    in_seam(d, code, waist, top, lean)


def _lean(d: Drafting, code: str) -> float:
    """How far the side of an A-line is turned at the hip, degrees clockwise."""
    if hem_line(code) not in d.sheet.lines:
        return 0.0
    side = d.sheet.edge(code, "side").path
    up = side.direction_at_length(side.length_to_point(d["Hfs"]))
    return math.degrees(math.atan2(up.x, -up.y))


def _top_of_bag(d: Drafting, waist: Path, side: Path, lean: float) -> float:
    """How far along the waist the bag goes: no wider there than at its foot, since the
    side runs in to the waist."""
    if lean:
        upright = turn(side.start, -lean)
        waist, side = waist.moved(upright), side.moved(upright)
    foot = side.at_length(max(0.0, side.length - d.n.pk_deep))
    x = foot.x + d.n.pk_wide
    hits = waist.meets(Path.line(Point(x, -60.0), Point(x, 60.0)))
    most = waist.length - OFF_CENTRE
    return min(hits[0][0], most) if hits else most

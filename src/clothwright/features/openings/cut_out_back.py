"""A cut-out in a closed back: an opening below a neck that closes at the nape with a
button and a loop (transformations 2, deep back c).

It is cut when everything else of the back is drafted; the back facing is led round it.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage
from clothwright.features.chains import CUT_OUT, NAPE, Chains
from clothwright.features.necks.keyhole import keyhole_notions, keyhole_operations
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.cut_out_facing import faced_round
from clothwright.features.openings.cut_out_findings import cut_out_findings
from clothwright.features.openings.cut_out_rules import CUT_OUT_BACK, PRACTICE
from clothwright.features.openings.cut_out_shapes import (
    HOW,
    SLASH,
    CutOutShape,
    half_edge,
    on_centre,
    slashed,
)
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 2"

FACED_CUT_OUT = "S66"
"""Code of the seam round the cut-out and up to the nape."""

_LEAST_BAND = 1.5
"""What stays between neck and cut-out at least, cm: room for a button of 1 cm (common
practice, no source)."""

_TAPE = 0.99
"""A stay tape is cut a hundredth shorter than its edge (first garment 9.6)."""

_BACKS = ("BC", "B")


def _faced_edge(piece: Piece, edge: Edge) -> Role:
    """An edge of nape or cut-out: where the halves are cut apart, as a pair, or on the
    fold or in one, which leaves little to turn in."""
    apart = piece.has("cb") and piece.edge("cb").kind is not EdgeKind.FOLD
    return Role.EDGE if apart else Role.SLASH


class CutOutBack(Feature):
    """Opening in the back below a neck that closes at the nape."""

    kind: Literal["cut-out back"] = "cut-out back"
    title: ClassVar[str] = "Cut-out back"
    sentence: ClassVar[str] = (
        "The back is [cut out] in the shape of a {shape}, from {top} below the nape to "
        "{foot} above the waist and {half} wide to each side; it closes at the nape "
        "with a button and a loop."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("top", _BACKS, (CUT_OUT, NAPE), (0.0, 1.0)),
        Pin("foot", _BACKS, ("cb", CUT_OUT), (0.0, -1.0)),
    )
    shows: ClassVar[Shown] = {
        "co top": tuple(f"{c}.{NAPE}" for c in _BACKS),
        "co foot": tuple(f"{c}.{CUT_OUT}" for c in _BACKS),
        "co half": tuple(f"{c}.{CUT_OUT}" for c in _BACKS),
        "co facing": (f"BF.{CUT_OUT}",),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, edges={CUT_OUT: _faced_edge, NAPE: _faced_edge})
        for code in (*_BACKS, "BF")
    )
    seams: ClassVar[Mapping[str, str]] = {
        FACED_CUT_OUT: "cut-out of the back and its facing, up to the nape"
    }
    at_centre: ClassVar[tuple[str, ...]] = ("top", "foot", "half")
    gives: ClassVar[frozenset[str]] = frozenset({"cut-out back"})
    needs: ClassVar[dict[str, str]] = {
        "high back neck": "a cut-out lies below a back neck that closes above it; add "
        "a back neckline, standard, round or boat",
        "inside finish": 'the facing of the neck is led round it; add a "neck facing" '
        'or a "facing"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "cut-out back": "a back has one cut-out; leave one off",
        "open back": "a low open back leaves no paper for a cut-out; leave one of the "
        "two off",
        "back opening": "a back that buttons down its whole length has no cut-out; "
        "button it in front, or leave the cut-out off",
        "collar": "a collar would hang over the cut-out and close with it; leave one "
        "of the two off",
        "back yoke": "a yoke's seam would run into the cut-out; leave one of the two "
        "off",
        "back neck dart": "with a dart at the back neck a cut-out's facing has no even "
        'ground; set back_shoulder = "ease"',
        "back strap": "a cut-out closes at the nape and needs no strap; leave one of "
        "the two off",
        "lining to the edge": "a cut-out is faced; line the top below the facing",
    }

    shape: CutOutShape = CutOutShape.DROP
    top: Annotated[
        Length | None,
        Number(
            "co_top",
            "co top",
            "top of the cut-out below the nape",
            PRACTICE,
            low=1.5,
            high=25.0,
        ),
    ] = None
    foot: Annotated[
        Length | None,
        Number(
            "co_foot",
            "co foot",
            "foot of the cut-out above the waist",
            PRACTICE,
            low=4.0,
            high=40.0,
        ),
    ] = None
    half: Annotated[
        Length | None,
        Number(
            "co_half",
            "co half",
            "half the width of the cut-out",
            PRACTICE,
            low=1.0,
            high=10.0,
        ),
    ] = None
    facing: Annotated[
        Length | None,
        Number(
            "co_facing",
            "co facing",
            "width of the facing round the cut-out",
            f"truing 5; {PRACTICE}",
            3.5,
            1.375,
            2.5,
            8.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (CUT_OUT_BACK,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the cut-out", self._draw),)

    def _draw(self, d: Drafting) -> None:
        """Draw the opening on the back, cut it out, lead the facing round it."""
        n = d.n
        d.part = "back"
        code = "BC" if "BC" in d.sheet.pieces else "B"
        edge = d.sheet.edge(code, "cb")
        if n.co_top - edge.path.end.y < _LEAST_BAND:
            raise PaperError(
                f"the cut-out begins {max(0.0, n.co_top - edge.path.end.y):.1f} cm "
                f"below the back neck; {_LEAST_BAND:g} cm must stay for the button: "
                "begin it (co top) lower, or make the neck (Db) less deep"
            )
        top = d.point("Cu", "O", "top of the cut-out", down="co_top")
        foot = d.point("Co", "Cu", "foot of the cut-out", down="co_long")
        on_fold = edge.kind is EdgeKind.FOLD
        neck = d.sheet.edge(code, "neck")
        if on_fold:
            opening, nape, rest = slashed(self.shape, top, foot, n.co_half, neck.path)
            cb = edge.path.between(0.0, edge.path.length_to_point(foot))
        else:
            drawn = half_edge(self.shape, top, foot, n.co_half)
            opening, s0, s1 = on_centre(drawn, edge.path)
            cb = edge.path.between(0.0, s0)
            nape, rest = edge.path.between(s1, edge.path.length), neck.path
        d.draw(
            CUT_OUT,
            opening,
            "half the edge of the cut-out",
            frm=("Co", "Cu"),
            detail=HOW[self.shape],
        )
        new = (edge.along(cb), Edge(CUT_OUT, opening), Edge(NAPE, nape))
        slash = (("off the centre at the nape by {}", SLASH),) if on_fold else ()
        d.lay(
            Verb.REDRAW,
            redraw(d.sheet, code, ["cb", "neck"], (*new, neck.along(rest))),
            f"{code}.{CUT_OUT}",
            "opening cut out of the back",
            amounts=(
                ("wide to each side", "co_half"),
                ("its foot {} above the waist", "co_foot"),
                *slash,
            ),
            detail="above it the edges are cut apart along the centre, and close at "
            "the nape",
            lines=(opening,),
        )
        d.part = "facing"
        facing = faced_round(d.sheet.piece("BF"), d.sheet.piece(code), n.co_facing)
        d.lay(
            Verb.TRACE,
            d.sheet.put(facing),
            "BF",
            "back facing led round the cut-out",
            amounts=(("wide beside it", "co_facing"),),
            detail="its edge there is the back's; its loose edge turns from the neck's "
            "into a line beside that",
            lines=(facing.edge("free").path,),
        )

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return [Run(c, CUT_OUT) for c in _BACKS if Chains(sheet).has(c, CUT_OUT)]

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        where = "above" if n.co_bra >= 0 else "below"
        yield (
            f"The cut-out of the back ends {fmt(abs(n.co_bra))} {where} the line of "
            f"the brassiere, which lies {fmt(n.yW - n.y_bra)} above the waist; it "
            f"begins {fmt(n.y_bra - n.co_top)} above that line."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "for the cut-out of the back, a hundredth shorter than the edge",
            length=_TAPE * _edge(sheet),
        )
        yield from keyhole_notions("cut-out at the nape")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        tape = _TAPE * _edge(sheet)
        yield Operation(
            Work.STAY,
            "Tape the cut-out of the back",
            (
                f"Tape of {fmt(tape)} on the net line of each half; the edge is eased "
                "to it, so that it does not stretch.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * tape,
            task=Task.STAY,
        )
        yield from keyhole_operations(fmt, "cut-out at the nape")

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return cut_out_seams(t)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return cut_out_findings(n, sheet)


def cut_out_seams(t: Chains) -> list[Seam]:
    """The cut-out faced, from the nape down and round to the centre back; beside a zip
    below it the facing ends short of that."""
    out = []
    for code in _BACKS:
        left = t.chain((code, NAPE, True), (code, CUT_OUT, True))
        right = t.chain(("BF", NAPE, True), ("BF", CUT_OUT, True))
        if not (left and right):
            continue
        start = t.sheet.edge("BF", CUT_OUT).path.start
        short = t.sheet.edge(code, CUT_OUT).path.length_to_point(start)
        at = t.length(left[:1]) + t.length(left[1:]) / 2
        out.append(
            Seam(
                FACED_CUT_OUT,
                "cut-out of the back",
                left,
                right,
                "neck",
                "centre back",
                Ease.about(-short, 0.05),
                None,
                (NotchPair(at, at, 2),),
                SeamKind.FACED,
            )
        )
    return out


def _edge(sheet: Sheet) -> float:
    """Length of the cut-out's edge of one half, cm."""
    return next(
        sheet.length(c, CUT_OUT) for c in _BACKS if Chains(sheet).has(c, CUT_OUT)
    )

"""A cut-out in a closed back that is faced: an opening below a neck that closes at the
nape with a button and a loop, or whose centre back is sewn together above it
(transformations 2, deep back c).

The back facing is led round it.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.chains import ABOVE, CUT_OUT, NAPE, Chains
from clothwright.features.necks.keyhole import keyhole_notions, keyhole_operations
from clothwright.features.necks.over_head import CLOSED_NECK, SLIT_NECK
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.cut_out import (
    ABOVE_SEAM,
    BACKS,
    CutOut,
    back_of,
    opening_of,
)
from clothwright.features.openings.cut_out_facing import faced_round
from clothwright.features.openings.cut_out_findings import (
    cut_out_findings,
    facing_findings,
)
from clothwright.features.openings.cut_out_rules import PRACTICE
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    NotchPair,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

FACED_CUT_OUT = "S66"
"""Code of the seam round the cut-out and up to the nape."""

_TAPE = 0.99
"""A stay tape is cut a hundredth shorter than its edge (first garment 9.6)."""


_WIDE_FACING = (
    "the facing of the cut-out reaches the end of the neck's: make it (co facing) or "
    "the cut-out (co half) narrower"
)


def faced_edge(piece: Piece, edge: Edge) -> Role:
    """An edge of nape or cut-out: where the halves are cut apart, as a pair, or on the
    fold or in one, which leaves little to turn in."""
    apart = piece.has("cb") and piece.edge("cb").kind is not EdgeKind.FOLD
    return Role.EDGE if apart else Role.SLASH


class Closing(Enum):
    """How the back closes above the cut-out."""

    LOOP = "closes at the nape with a button and a loop"
    SEWN = "is sewn together above it"


class CutOutBack(CutOut):
    """Faced opening in the back below a neck that closes above it."""

    kind: Literal["cut-out back"] = "cut-out back"
    title: ClassVar[str] = "Cut-out back"
    sentence: ClassVar[str] = (
        "The back is [cut out] in the shape of a {shape}, from {top} below the nape to "
        "{foot} above the waist; it {closing}."
    )
    shows: ClassVar[Shown] = {
        "co top": tuple(f"{c}.{e}" for c in BACKS for e in (NAPE, ABOVE)),
        "co foot": tuple(f"{c}.{CUT_OUT}" for c in BACKS),
        "co half": tuple(f"{c}.{CUT_OUT}" for c in BACKS),
        "co facing": (f"BF.{CUT_OUT}",),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(
            code,
            edges={CUT_OUT: faced_edge, NAPE: faced_edge, ABOVE: Role.CENTRE_ZIP},
        )
        for code in (*BACKS, "BF")
    )
    page: ClassVar[int] = 2
    seams: ClassVar[Mapping[str, str]] = {
        FACED_CUT_OUT: "cut-out of the back and its facing, up to the nape",
        ABOVE_SEAM: "centre back above a cut-out",
    }
    needs: ClassVar[Mapping[str, str]] = {
        **CutOut.needs,
        "inside finish": 'the facing of the neck is led round it; add a "neck facing" '
        'or a "facing"',
    }
    clashes: ClassVar[Mapping[str, str]] = {
        **CutOut.clashes,
        "bound neck": "the facing of the neck is led round a cut-out; below a bound "
        'neck take a "bound cut-out"',
    }

    closing: Closing = Closing.LOOP
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
        own = CLOSED_NECK if self.sewn_above else SLIT_NECK
        return (*super().tables(), own)

    @property
    def sewn_above(self) -> bool:
        return self.closing is Closing.SEWN

    def wants(self) -> Mapping[str, str]:
        return {**self.needs, **(SEAM_BEHIND if self.sewn_above else {})}

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the cut-out", self._draw),)

    def _draw(self, d: Drafting) -> None:
        """Draw the opening on the back, cut it out, lead the facing round it."""
        self._cut(d)
        d.part = "facing"
        shell = d.sheet.piece(back_of(d.sheet))
        facing = faced_round(d.sheet.piece("BF"), shell, d.n.co_facing, _WIDE_FACING)
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
        return opening_of(sheet)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "for the cut-out of the back, a hundredth shorter than the edge",
            length=_TAPE * _edge(sheet),
        )
        if not self.sewn_above:
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
        if not self.sewn_above:
            yield from keyhole_operations(fmt, "cut-out at the nape")

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        yield from cut_out_seams(t)
        yield from super().sewn(t, n)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from cut_out_findings(n, sheet)
        yield from facing_findings(n, sheet)


SEAM_BEHIND = {
    "centre back zip": "above a cut-out that has no loop the centre back is a seam, "
    'and the zip below it opens the back; add a "concealed zip"'
}
"""What a cut-out needs whose centre back is sewn together above it."""


def cut_out_seams(t: Chains) -> list[Seam]:
    """The cut-out faced, from the nape down and round to the centre back; beside a zip
    below it the facing ends short of that."""
    out = []
    for code in BACKS:
        left = t.chain((code, NAPE, True), (code, CUT_OUT, True))
        right = t.chain(("BF", NAPE, True), ("BF", CUT_OUT, True))
        if not (left and right):
            continue
        start = t.sheet.edge("BF", CUT_OUT).path.start
        short = t.sheet.edge(code, CUT_OUT).path.length_to_point(start)
        at = t.length(left) - t.length(left[-1:]) / 2
        out.append(
            Seam(
                FACED_CUT_OUT,
                "cut-out of the back",
                left,
                right,
                "neck" if len(left) > 1 else "centre back, above",
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
    return next(sheet.length(r.piece, r.edge) for r in opening_of(sheet))

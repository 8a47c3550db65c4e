"""A cut-out in the back of a top: where its opening lies, how the back is cut for it
(transformations 2, deep back c).

It is cut when everything else of the back is drafted. Above it the centre back is cut
apart up to the nape, where it closes with a loop, or it is a seam.
"""

from abc import abstractmethod
from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar

from clothwright.features.base import Feature, Number, Pin
from clothwright.features.chains import ABOVE, CUT_OUT, NAPE, Chains, on_table
from clothwright.features.openings.cut_out_rules import CUT_OUT_BACK, PRACTICE
from clothwright.features.openings.cut_out_shapes import (
    HOW,
    SLASH,
    CutOutShape,
    half_edge,
    on_centre,
    slashed,
)
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    PaperError,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

BACKS = ("BC", "B")

ABOVE_SEAM = "S142"
"""Code of the centre back above a cut-out, where it is sewn together; of its facing
S142a."""

_LEAST_BAND = 1.5
"""What stays between neck and cut-out at least, cm: room for a button of 1 cm, or for
two bindings (common practice, no source)."""


class CutOut(Feature):
    """Base of the cut-outs."""

    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("top", BACKS, (CUT_OUT, NAPE), (0.0, 1.0)),
        Pin("top", BACKS, (CUT_OUT, ABOVE), (0.0, 1.0)),
        Pin("foot", BACKS, ("cb", CUT_OUT), (0.0, -1.0)),
    )
    at_centre: ClassVar[tuple[str, ...]] = ("top", "foot", "half")
    gives: ClassVar[frozenset[str]] = frozenset({"cut-out back"})
    needs: ClassVar[Mapping[str, str]] = {
        "high back neck": "a cut-out lies below a back neck that closes above it; add "
        "a back neckline, standard, round or boat",
    }
    clashes: ClassVar[Mapping[str, str]] = {
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

    @property
    @abstractmethod
    def sewn_above(self) -> bool:
        """True when the centre back above it is a seam."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (CUT_OUT_BACK,)

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

    def _cut(self, d: Drafting) -> None:
        """Draw the opening on the back and cut it out."""
        n = d.n
        d.part = "back"
        code = back_of(d.sheet)
        edge = d.sheet.edge(code, "cb")
        if n.co_top - edge.path.end.y < _LEAST_BAND:
            what = "two bindings" if "nb_w" in n else "the button"
            raise PaperError(
                f"the cut-out begins {max(0.0, n.co_top - edge.path.end.y):.1f} cm "
                f"below the back neck; {_LEAST_BAND:g} cm must stay for {what}: "
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
        above = ABOVE if self.sewn_above else NAPE
        new = (edge.along(cb), Edge(CUT_OUT, opening), Edge(above, nape))
        slash = (("off the centre at the nape by {}", SLASH),) if on_fold else ()
        closes = "is sewn together" if self.sewn_above else "closes at the nape"
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
            detail=f"above it the back is cut apart along the centre, and {closes}",
            lines=(opening,),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        for code, key, what in (
            (back_of(t.sheet), ABOVE_SEAM, ""),
            ("BF", f"{ABOVE_SEAM}a", " of the facing"),
        ):
            chain = t.chain((code, ABOVE, True))
            if chain:
                yield Seam(
                    key,
                    f"centre back{what} above the cut-out",
                    chain,
                    chain,
                    "neck",
                    "cut-out",
                    Ease.about(0.0, 0.05),
                    kind=SeamKind.TWIN,
                )


def back_of(sheet: Sheet) -> str:
    """The piece of the back at its centre."""
    return "BC" if "BC" in sheet.pieces else "B"


def opening_of(sheet: Sheet) -> Iterable[Run]:
    """The edge of the cut-out, of one half."""
    return [Run(c, CUT_OUT) for c in BACKS if on_table(sheet, c, CUT_OUT)]

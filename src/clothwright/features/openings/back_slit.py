"""A slit down the centre back of a closed neck, faced, with a button and a loop at the
nape: the head goes through (transformations 2, back opening lengths).

Its edges run from a little off the fold at the neck to a point on it. It is drawn when
everything else of the back is, and the back facing is led round it.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage
from clothwright.features.chains import NAPE, Chains
from clothwright.features.necks.keyhole import keyhole_notions, keyhole_operations
from clothwright.features.necks.over_head import SLIT_NECK
from clothwright.features.notions import Notion
from clothwright.features.openings.cut_out_back import faced_edge
from clothwright.features.openings.cut_out_facing import faced_alone, faced_round
from clothwright.features.openings.cut_out_findings import beside, gap
from clothwright.features.openings.cut_out_shapes import SLASH
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    PaperError,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    meetings,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 2"

FACED_SLIT = "S134"
"""Code of the seam of the slit and its facing."""

_BACKS = ("BC", "B")

_ABOVE_WAIST = 8.0
"""A slit ends so far above the waist at least, cm, as a back neck does (first garment
3.3)."""

_WHAT = "back slit"

_NOTE = (
    "Slit of the back: it is marked, not cut out. Stitch the facing on down its one "
    "side, one stitch across its foot and up the other; slash along the fold to the "
    "foot, clip there and turn."
)

_WIDE_FACING = (
    "the facing of the back slit reaches the end of the neck's: make it (sl facing) "
    "narrower"
)


_WIDER = (
    "the facing of the back slit is wider than its neck: make it (sl facing) narrower"
)

_FROM_NECK = "; its loose edge turns from the neck's into a line beside that"


class BackNeckSlit(Feature):
    """Slit at the centre of a closed back neck."""

    kind: Literal["back neck slit"] = "back neck slit"
    title: ClassVar[str] = "Back neck slit"
    sentence: ClassVar[str] = (
        "The back neck opens in a [slit] {length} long, with a button and a loop at "
        "the nape."
    )
    pins: ClassVar[tuple[Pin, ...]] = (Pin("length", _BACKS, ("cb", NAPE), (0.0, 1.0)),)
    shows: ClassVar[Shown] = {
        "sl": tuple(f"{c}.{NAPE}" for c in _BACKS),
        "sl facing": (f"BF.{NAPE}",),
    }
    pieces: ClassVar[tuple[About, ...]] = tuple(
        About(code, edges={NAPE: faced_edge}) for code in (*_BACKS, "BF")
    )
    seams: ClassVar[Mapping[str, str]] = {
        FACED_SLIT: "slit of the back neck and its facing"
    }
    at_centre: ClassVar[tuple[str, ...]] = ("length",)
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"back slit"})
    needs: ClassVar[dict[str, str]] = {
        "high back neck": "a slit lies below a back neck that closes above it; add a "
        "back neckline, standard, round or boat",
        "inside finish": 'the facing of the neck is led round it; add a "neck facing" '
        'or a "facing", or bind the neck',
    }
    clashes: ClassVar[dict[str, str]] = {
        "back slit": "a back neck has one slit; leave one off",
        "centre back zip": "the neck opens with the zip of the back; leave the slit "
        "off, or open the garment at its side",
        "back opening": "a back that buttons down its whole length needs no slit; "
        "leave one of the two off",
        "open back": "a low open back needs no slit; leave one of the two off",
        "cut-out back": "a cut-out opens the nape itself; leave one of the two off",
        "collar": "a collar would close over the slit; leave one of the two off",
        "back yoke": "a yoke's seam would run into the slit; leave one of the two off",
        "back neck dart": "with a dart at the back neck the facing of a slit has no "
        'even ground; set back_shoulder = "ease"',
        "back strap": "a slit closes at the nape and needs no strap; leave one of the "
        "two off",
        "lining to the edge": "a slit is faced; line the top below the facing",
    }

    length: Annotated[
        Length | None,
        Number(
            "sl",
            "sl",
            "length of the slit below the back neck",
            _SRC,
            14.0,
            5.5,
            6.0,
            35.0,
            (12.0, 15.0),
        ),
    ] = None
    facing: Annotated[
        Length | None,
        Number(
            "sl_facing",
            "sl facing",
            "width of the facing beside the slit",
            "truing 5; common practice, no source",
            3.5,
            1.375,
            2.5,
            8.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SLIT_NECK,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the back slit", _draw),)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield _NOTE

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        return keyhole_notions(_WHAT)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return keyhole_operations(fmt, _WHAT)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        left = t.chain(*((code, NAPE, True) for code in _BACKS))
        right = t.chain(("BF", NAPE, True))
        if left and right:
            yield Seam(
                FACED_SLIT,
                "slit of the back neck",
                left,
                right,
                "neck",
                "foot of the slit",
                Ease.about(0.0, 0.05),
                kind=SeamKind.FACED,
            )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        back = sheet.piece(_back(sheet))
        left = min(gap(back.edge(NAPE).path, path) for path in beside(back))
        if left < n.sl_facing:
            yield Finding(
                "SL1",
                Severity.REFUSE,
                f"The facing beside the back slit is {n.sl_facing:.1f} cm wide, and "
                f"the back only {left:.1f} cm, up to its next edge or dart.",
                "sl facing",
                "Make it (sl facing) narrower, or the slit (sl) shorter.",
                {"facing": n.sl_facing, "left": left},
            )


def _back(sheet: Sheet) -> str:
    return "BC" if "BC" in sheet.pieces else "B"


def _draw(d: Drafting) -> None:
    """Mark the foot, rule the slit's edge to the neck, lead the facing round it."""
    n = d.n
    d.part = "back"
    code = _back(d.sheet)
    cb, neck = d.sheet.edge(code, "cb"), d.sheet.edge(code, "neck")
    most = n.yW - _ABOVE_WAIST - cb.path.end.y
    if n.sl > most:
        raise PaperError(
            f"the slit of the back comes nearer to the waist than {_ABOVE_WAIST:g} cm: "
            f"make it (sl) {max(0.0, most):.1f} cm long at most"
        )
    d.start("Sn", cb.path.end, "centre of the back neck")
    foot = d.point("Sl", "Sn", "foot of the slit", down="sl")
    plumb = Path.line(Point(SLASH, foot.y), Point(SLASH, neck.path.start.y - 10.0))
    fault = "the slit of the back runs beside its neck: make the neck (dw) wider"
    at = meetings(neck.path, plumb, fault)[0][0]
    slit = Path.line(foot, neck.path.at_length(at))
    new = (
        cb.along(cb.path.between(0.0, cb.path.length_to_point(foot))),
        Edge(NAPE, slit),
        neck.along(neck.path.between(at, neck.path.length)),
    )
    d.lay(
        Verb.REDRAW,
        redraw(d.sheet, code, ["cb", "neck"], new),
        f"{code}.{NAPE}",
        "edge of the slit, from its foot on the fold to the neck",
        amounts=(("off the centre at the neck by {}", SLASH),),
        lines=(slit,),
    )
    d.part = "facing"
    shell = d.sheet.piece(code)
    if "BF" in d.sheet.pieces:
        facing = faced_round(d.sheet.piece("BF"), shell, n.sl_facing, _WIDE_FACING)
        says, ends = "back facing led round the slit", _FROM_NECK
    else:
        facing = faced_alone(shell, n.sl_facing, _WIDER)
        says, ends = "facing of the slit alone, below a neck that is bound", ""
    d.lay(
        Verb.TRACE,
        d.sheet.put(facing),
        "BF",
        says,
        amounts=(("wide beside it", "sl_facing"),),
        detail=f"its edge there is the back's{ends}",
        lines=(facing.edge("free").path,),
    )

"""Extended shoulder: the shoulder runs out over the arm as a cap, without a sleeve
(transformations 3).

Straight out along the shoulder line, then dropped over the arm; the underarm is lowered
for it.
"""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
    side_square_back,
    side_square_front,
)
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    distance,
    dot,
    turned,
)
from clothwright.features.armhole import outlines
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, PaperError, Sheet, Verb, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 3"

ROOM = 5.0
"""The free edge lies round the upper arm, so much wider than it, cm (common practice,
no source)."""

EXTENDED = RuleTable("extended shoulder")


@EXTENDED.rule(
    "ti",
    "narrowing of the shoulder at the tip",
    source=_SRC,
    formula="none: it is run on",
    low=0.0,
    high=0.0,
)
def ti() -> float:
    return 0.0


@EXTENDED.rule(
    "ta",
    "tightening of the front armhole",
    source=_SRC,
    formula="none: it hangs free",
    low=0.0,
    high=0.0,
)
def ta() -> float:
    return 0.0


class ExtendedShoulder(Feature):
    """Shoulder run on as a cap."""

    kind: Literal["extended shoulder"] = "extended shoulder"
    title: ClassVar[str] = "Extended shoulder"
    sentence: ClassVar[str] = (
        "Without sleeves; the [shoulder is run on] by {out} over the arm and dropped "
        "there by {drop}, the underarm {lowered} lower."
    )
    shows: ClassVar[Shown] = {
        "ext": ("F.shoulder",),
        "ext drop": ("F.shoulder",),
        "ul": ("F.armhole",),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"armhole", "lined arm", "sleeveless"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a shoulder is run on from a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": "an order has one kind of armhole",
        "front panel seam": "a panel line would start in the free edge over the arm; "
        "take a side dart in place of the princess line",
        "back panel seam": "a panel line would start in the free edge over the arm; "
        "take a back waist dart in place of the princess line",
        "upper bust dart": "the shoulder and the armhole hang free of the body; leave "
        "the bust dart at the side or lead it to the waist",
    }

    out: Annotated[
        Length | None,
        Number("ext", "ext", "shoulder run on over the arm", _SRC, 5, 2, 2, 10, (4, 8)),
    ] = None
    drop: Annotated[
        Length | None,
        Number(
            "ext_drop",
            "ext drop",
            "drop of the extended shoulder at its end",
            _SRC,
            1.5,
            0.625,
            0.0,
            3.5,
            (1.0, 2.0),
        ),
    ] = None
    lowered: Annotated[
        Length | None,
        Number("ul", "ul", "underarm lowered", _SRC, 1.5, 0.625, 0.0, 5.0, (1.0, 2.0)),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, EXTENDED)

    def stages(self) -> tuple[Stage, ...]:
        return (
            SHOULDER_STAGE,
            Stage(Rank.ARMHOLE, "necks and armholes", outlines),
            Stage(Rank.ARMHOLE, "the shoulders run on", _run_on),
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        tape = sheet.length("F", "armhole") + sheet.length("B", "armhole")
        yield Operation(
            Work.STAY,
            "Tape the armholes",
            (
                f"Tape of {fmt(tape)} on each net line, flat; the edge that stands out "
                f"{fmt(n.ext)} over the arm stretches in wear.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * tape,
            task=Task.STAY,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        round_ = sheet.length("F", "armhole") + sheet.length("B", "armhole")
        if round_ < n.UA + ROOM:
            yield Finding(
                "A2",
                Severity.WARN,
                f"The armhole is {round_:.1f} cm round; over the arm (UA) it wants "
                f"{n.UA + ROOM:.1f} cm.",
                "ul",
                "Lower the underarm (ul), or run the shoulder on less (ext).",
                {"A": round_, "UA": n.UA},
            )


def _run_on(d: Drafting) -> None:
    """Run both shoulders on; draw the armholes from them to the lowered underarm."""
    n = d.n
    f, b = d.sheet.piece("F"), d.sheet.piece("B")
    if len([e for e in b.edges if "shoulder" in e.name]) > 1:
        raise PaperError(
            "an extended shoulder is not drawn over a back shoulder dart: set "
            'back_shoulder = "ease"'
        )
    d.part = "front"
    slope = n.sigma_f_new
    tip, end = _tip(d, "Te", d["Tf"], outwards_front(slope), inward_front(slope))
    g = _lowered(d, "Gl", f.edge("armhole").path.start, f.edge("side high").path)
    square = turned(side_square_front(d["Gc"], d["wf"]), n.theta)
    arm = _armhole(g, square, tip, end)
    over = tip + Path.line(d["Tf"], d["Nf′"])
    new = [Edge("armhole", arm), Edge("shoulder", over)]
    sheet = redraw(d.sheet, "F", ["armhole", "shoulder"], new)
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{"armhole front": arm}),
        "F",
        "shoulder and armhole of the front over the arm",
        frm=("Te", "Gl"),
        lines=(arm, over),
    )
    d.part = "back"
    slope = n.sigma_b_new
    out = outwards_back(slope)
    tip, end = _tip(d, "Tbe", d["Tb"], out, inward_back(slope))
    u = _lowered(d, "ubl", d["ub"], b.edge("side").path.reversed())
    square = side_square_back(d["ub"], d["wb"])
    arm = _armhole(u, square, tip, end).reversed()
    over = Path.line(d["Nb′"], d["Tb"]) + tip.reversed()
    new = [Edge("shoulder", over), Edge("armhole", arm)]
    sheet = redraw(d.sheet, "B", ["shoulder", "armhole"], new)
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{"armhole back": arm}),
        "B",
        "shoulder and armhole of the back over the arm",
        frm=("Tbe", "ubl"),
        lines=(arm, over),
    )


def _tip(
    d: Drafting, name: str, tip: Point, out: Vector, inward: Vector
) -> tuple[Path, Vector]:
    """The line from the extended tip back to the shoulder's own, and the direction into
    the piece square to its end."""
    n = d.n
    at = d.found(
        name,
        tip + out * n.ext + inward * n.ext_drop,
        "end of the shoulder over the arm",
        amounts=(("along the shoulder from the tip", "ext"), ("dropped", "ext_drop")),
    )
    q = tip + out * (0.5 * n.ext)
    last = direction(at, q)
    reach = distance(at, q)
    path = Path((Cubic(at, at + last * (0.6 * reach), tip + out * (0.3 * n.ext), tip),))
    square = turned(last, 90)
    return path, square if dot(square, inward) > 0 else square * -1.0


def _lowered(d: Drafting, name: str, underarm: Point, side: Path) -> Point:
    """The underarm moved down along its side, which ends there."""
    half = "front" if d.part == "front" else "back"
    return d.found(
        name,
        underarm - side.end_direction * d.n.ul,
        f"underarm of the {half}, lowered",
        amounts=(("down along the side", "ul"),),
    )


def _armhole(g: Point, square: Vector, tip: Path, inward: Vector) -> Path:
    """From the underarm, square to the side, to the end of the shoulder, square to
    that."""
    at = tip.start
    h = max(5.0, 0.5 * abs(at.x - g.x))
    return Path((Cubic(g, g + square * h, at + inward * (0.45 * abs(g.y - at.y)), at),))

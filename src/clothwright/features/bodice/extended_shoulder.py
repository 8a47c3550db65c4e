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
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.armhole import outlines
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, PaperError, Sheet, Verb, redraw
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 3"

ROOM = 5.0
"""The free edge lies round the upper arm, so much wider than it, cm (common practice,
no source)."""

_SIDE_LEFT = 0.9
"""What is left of the side above its dart at least, cm (common practice, no source)."""

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
            Stage(Rank.ARMHOLE, "the shoulders run on", run_on),
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


def run_on(d: Drafting) -> None:
    """Run both shoulders on; draw the armholes from them to the lowered underarm."""
    n = d.n
    f, b = d.sheet.piece("F"), d.sheet.piece("B")
    if len([e for e in b.edges if "shoulder" in e.name]) > 1:
        raise PaperError(
            "a shoulder that runs on over the arm is not drawn with a dart: set "
            'back_shoulder = "ease"'
        )
    d.part = "front"
    slope = n.sigma_f_new
    tip = _tip(d, "Te", d["Tf"], outwards_front(slope), inward_front(slope))
    g = _lowered(d, "Gl", f.edge("armhole").path.start, f.edge("side high").path)
    square = turned(side_square_front(d["Gc"], d["wf"]), n.theta)
    arm = armhole(g, square, tip, inward_front(slope))
    over = tip + Path.line(d["Tf"], d["Nf′"])
    new = [Edge("armhole", arm), Edge("shoulder", over)]
    sheet = redraw(d.sheet, "F", ["armhole", "shoulder"], new)
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{"armhole front": arm}),
        "F",
        "shoulder and armhole of the front: the shoulder rounded over its old tip to "
        "Te, the armhole square to it there and on to Gl, square to the side",
        frm=("Te", "Gl"),
        lines=(arm, over),
    )
    d.part = "back"
    slope = n.sigma_b_new
    tip = _tip(d, "Tbe", d["Tb"], outwards_back(slope), inward_back(slope))
    u = _lowered(d, "ubl", d["ub"], b.edge("side").path.reversed())
    arm = armhole(u, side_square_back(d["ub"], d["wb"]), tip, inward_back(slope))
    arm = arm.reversed()
    over = Path.line(d["Nb′"], d["Tb"]) + tip.reversed()
    new = [Edge("shoulder", over), Edge("armhole", arm)]
    sheet = redraw(d.sheet, "B", ["shoulder", "armhole"], new)
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{"armhole back": arm}),
        "B",
        "shoulder and armhole of the back: the shoulder rounded over its old tip to "
        "Tbe, the armhole square to it there and on to ubl, square to the side",
        frm=("Tbe", "ubl"),
        lines=(arm, over),
    )


def _tip(d: Drafting, name: str, tip: Point, out: Vector, inward: Vector) -> Path:
    """The line from the extended tip back to the shoulder's own."""
    n = d.n
    line = over_the_arm(tip, out, inward, n.ext, n.ext_drop)
    d.found(
        name,
        line.start,
        "end of the shoulder over the arm",
        amounts=(
            ("on beyond the tip, along the shoulder line", "ext"),
            ("down, square to that line", "ext_drop"),
        ),
    )
    return line


def over_the_arm(
    tip: Point, out: Vector, inward: Vector, ext: float, drop: float
) -> Path:
    """From the end of a shoulder that runs on over the arm back to its own tip."""
    at = tip + out * ext + inward * drop
    q = tip + out * (0.5 * ext)
    reach = 0.6 * distance(at, q)
    return Path(
        (Cubic(at, at + direction(at, q) * reach, tip + out * (0.3 * ext), tip),)
    )


def _lowered(d: Drafting, name: str, underarm: Point, side: Path) -> Point:
    """The underarm moved down along its side, which ends there."""
    if side.length < d.n.ul + _SIDE_LEFT:
        raise PaperError(
            f"the underarm is lowered (ul) by {d.n.ul:.1f} cm, down to the side dart: "
            f"make that {max(0.0, side.length - _SIDE_LEFT):.1f} cm or less"
        )
    half = "front" if d.part == "front" else "back"
    return d.found(
        name,
        underarm - side.end_direction * d.n.ul,
        f"underarm of the {half}, lowered",
        amounts=(("down along the side", "ul"),),
    )


def armhole(g: Point, square: Vector, tip: Path, inward: Vector) -> Path:
    """From the underarm, square to the side, to the end of the shoulder, square to
    that."""
    at = tip.start
    into = turned(tip.start_direction, 90)
    into = into if dot(into, inward) > 0 else into * -1.0
    h = max(5.0, 0.5 * abs(at.x - g.x))
    return Path((Cubic(g, g + square * h, at + into * (0.45 * abs(g.y - at.y)), at),))

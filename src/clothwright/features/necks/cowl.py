"""Cowl: the neck falls in soft folds from shoulder to shoulder (transformations 2).

The bust dart is led into the neck, which brings the shoulder away from the centre; what
is still wanted of width comes from turning the centre line out about its end at the
waist, until the line from the shoulder meets it square. The front is cut on the bias,
its facing in one with it, folded back along that line.
"""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_front
from clothwright.curves import (
    Path,
    Point,
    direction,
    distance,
    dot,
    left_normal,
    mirror_in,
    turned,
)
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.bust_dart_rules import LEAST_BESIDE
from clothwright.features.bodice.front_dart import (
    OPENED,
    DartPlace,
    close_side,
    lead,
    tighten_armhole,
)
from clothwright.features.bodice.opened_dart import dart_angle_of, set_back
from clothwright.features.bodice.side_dart import (
    SIDE_DART,
    front_waist_dart,
    waist_dart_findings,
)
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.features.grain import ON_BIAS
from clothwright.features.necks.cowl_rules import (
    COUNTED,
    COWL,
    DW_USUAL,
    MOST_TURNED,
    SRC,
    Folds,
    cowl_findings,
)
from clothwright.features.necks.neck_shapes import FRONT_CURVES, FrontShape
from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SQUARE = 0.05
"""Edges that differ by less need no turning of the centre line, cm."""


class Cowl(Feature):
    """Draped front neck."""

    kind: Literal["cowl"] = "cowl"
    title: ClassVar[str] = "Cowl"
    sentence: ClassVar[str] = (
        "The front neck falls in a [cowl] of {folds} folds, each {drop} deep, from a "
        "neck {width} wider than the standard; its facing, {facing} deep, is cut on."
    )
    shows: ClassVar[Shown] = {
        "cd": ("F.free", "F.cf"),
        "drop": ("F.free", "F.cf"),
        "dw": ("F.shoulder",),
        "fc": ("F.free",),
        "neck": ("F.free",),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"neckline", "front panels", "cowl"})
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "neckline": "an order has one front neckline",
        "front panels": "a cowl takes the bust dart into the neck; leave the other off",
        "front yoke": "a yoke's seam would cut the folds of the cowl; leave it off",
        "empire seam": "an empire seam is not yet cut through a front on the bias",
        "torso": "a front without a waist seam is not yet laid on the bias for a cowl; "
        "sew a skirt to a waist seam",
    }

    folds: Folds = Folds.ONE
    drop: Annotated[
        Length | None,
        Number(
            "drop",
            "drop",
            "drop of each fold of the cowl",
            SRC,
            low=4.0,
            high=12.0,
            usual=(6.0, 10.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "dw",
            "dw",
            "width of the neck beyond the standard, along the shoulder",
            SRC,
            low=0.0,
            high=9.0,
            usual=(2.0, 6.0),
        ),
    ] = None
    facing: Annotated[
        Length | None,
        Number(
            "fc",
            "fc",
            "depth of the facing cut on to the cowl, at the centre",
            SRC,
            10.0,
            4.0,
            5.0,
            15.0,
            (8.0, 12.0),
        ),
    ] = None

    def said(self) -> str:
        if self.folds is Folds.ONE:
            return self.sentence.replace("folds, each {drop}", "fold, {drop}")
        return self.sentence

    def tables(self) -> tuple[RuleTable, ...]:
        return (SIDE_DART, COWL, COUNTED[self.folds])

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield DW_USUAL.usually(unit)
        yield Given(
            "tau",
            "τ",
            "tilt of the neck at the shoulder",
            Kind.ANGLE,
            0.0,
            Hand.DEFAULT,
            SRC,
        )

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.NECK, "the neck below the cowl", _draw),
            Stage(Rank.FRONT_PANELS, "the bust dart in the cowl", _open),
            Stage(Rank.CLOSURE, "the edge of the cowl", _turn_out),
        )

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {"F": Cuts("1, opened at the fold, on the bias", bias=True)}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Front on the bias: the cloth cannot be folded there, so trace the half "
            "over and cut the front whole, in a single layer."
        )
        yield (
            f"The cowl hangs {fmt(n.sag)} below the ends of the neck at rest; pin it "
            "on a form in the cloth itself before you cut."
        )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.READY,
            "Fold the cowl's facing back",
            (
                f"Along the fold of the cowl, {fmt(n.fc)} deep at the centre; do not "
                "press it. A small weight in its middle keeps it in place.",
            ),
            stitch=Stitch.HAND,
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from waist_dart_findings(n)
        yield from cowl_findings(n, sheet)


def drapes(front: Piece) -> bool:
    """True for a front that a cowl falls from."""
    return any(k.name == ON_BIAS for k in front.lines)


def _draw(d: Drafting) -> None:
    """A round neck between shoulder and centre: the cowl opens from it."""
    n = d.n
    d.part = "front"
    c = d.found(
        "C",
        Point(n.X, d["hf"].y + n.Df),
        "centre of the front neck, before the cowl is drawn",
        amounts=(("down from the level of hf", "Df"),),
        detail="on the centre front line",
    )
    slope = n.sigma_f_new
    d.draw(
        "neck front",
        FRONT_CURVES[FrontShape.ROUND](d["Nf′"], c, inward_front(slope), slope, 0.0),
        "neck of the front, before the cowl is drawn",
        frm=("Nf′", "C"),
        detail="square to the shoulder and to the centre front",
    )


def _open(d: Drafting) -> None:
    """Lead the bust dart into the neck; rule the neck level to the centre over it."""
    n = d.n
    d.part = "front"
    if n.ta > 0:
        tighten_armhole(d)
    o = OPENED[DartPlace.NECK]
    whole = dart_angle_of(d.sheet.piece("F"), "dart low", "dart high")
    led = min(n.theta_c, whole)
    neck = [o.edge]
    if led > 0.0:
        path = d.sheet.edge("F", o.edge).path
        if path.length < sum(LEAST_BESIDE[DartPlace.NECK]):
            raise PaperError(
                "the neck leaves no room for the cowl: make it (dw) narrower"
            )
        at = d.found(
            o.mark,
            path.at_length(path.length / 2),
            "where the neck is slashed for the cowl",
            amounts=(("along the neck from the shoulder", path.length / 2),),
        )
        lead(d, DartPlace.NECK, at, led, "theta_c")
        d.sheet = d.sheet.unsew(o.dart)
        neck = o.run
    if whole - led < 1e-6:
        close_side(d)
    else:
        set_back(d, ("dart low", "dart high"), "As", "set_back")
    p = d.sheet.edge("F", neck[0]).path.start
    top = Point(n.X, p.y)
    sheet = redraw(d.sheet, "F", neck, [straight("neck", p, top)])
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{"neck front": Path.line(p, top)}),
        "F.neck",
        "neck ruled level from the shoulder to the centre line run on upwards",
        amounts=(("long so far", distance(p, top)),),
        lines=(Path.line(p, top),),
    )
    front_waist_dart(d)


def _turn_out(d: Drafting) -> None:
    """Turn the centre line out about its end at the waist until the edge is as long as
    wanted and square to it; draw the waist square to it as well."""
    n = d.n
    d.part = "front"
    f = d.sheet.piece("F")
    p, foot, waist = f.edge("neck").path.start, f.edge("cf").path.end, f.edge("waist")
    top = Point(n.X, p.y)
    if n.ell - distance(p, top) > _SQUARE:
        top, foot, path = _square_to(p, foot, waist.path, n.ell)
        turn = math.degrees(math.atan2(top.x - foot.x, foot.y - top.y))
        if turn > MOST_TURNED:
            raise PaperError(
                f"a cowl that hangs {n.cd:.1f} cm deep wants its centre turned out by "
                f"{turn:.0f}°, and {MOST_TURNED:.0f}° is the most: take fewer folds, "
                "or let each (drop) drop less"
            )
        new = [
            straight("neck", p, top),
            straight("cf", top, foot, EdgeKind.FOLD),
            Edge("waist", path),
        ]
        sheet = redraw(d.sheet, "F", ["neck", "cf", "waist"], new)
        d.lay(
            Verb.REDRAW,
            sheet,
            "F.cf",
            "centre line turned out about the waist, the edge of the cowl square to it",
            amounts=(("the edge, from the shoulder", "ell"), ("turned by", turn)),
            detail="the waist drawn square to the new centre, as long as before",
            lines=(new[0].path, new[1].path, path),
        )
    fold = Path.line(p, top)
    front = d.sheet.piece("F").with_lines(InnerLine(ON_BIAS, fold))
    d.sheet = d.sheet.put(front).drawn(**{"neck front": fold})


def _square_to(
    p: Point, foot: Point, waist: Path, ell: float
) -> tuple[Point, Point, Path]:
    """Top and foot of the centre line that a line of length `ell` from `p` meets square
    (on the circle over p and the foot), and the waist from that foot, square to it, of
    its old length."""
    u, wanted, start = waist.start_direction, waist.length, foot
    v = turned(waist.end_direction, -90)
    top, path = p, waist
    for _ in range(6):
        reach = distance(p, start)
        if ell >= reach:
            raise PaperError(
                "the cowl's edge would be longer than the front: take fewer folds"
            )
        across = math.degrees(math.asin(ell / reach))
        top = start + turned(direction(start, p), across) * (
            reach * math.cos(math.radians(across))
        )
        down = direction(top, start)
        path = Path((waist_curve(start, waist.end, down, v, 0.0, 0.0),))
        start = start + u * (path.length - wanted)
    return top, path.start, path


# -- its facing ------------------------------------------------------------------------
def cut_on(front: Piece, depth: float, shoulder: float) -> Piece:
    """The front with its facing cut on above the fold of the cowl: `shoulder` cm of the
    shoulder mirrored in the fold, `depth` cm at the centre, square there."""
    neck, cf = front.edge("neck").path, front.edge("cf").path
    p, top = neck.start, neck.end
    m = mirror_in(p, top)
    out = m.direction(front.edge("shoulder").path.end_direction * -1.0)
    tip = p + out * shoulder
    up = direction(cf.end, cf.start)
    head = top + up * depth
    across = left_normal(out)
    across = across if dot(across, up) > 0 else across * -1.0
    reach = distance(tip, head)
    free = Path.cubic(
        tip,
        tip + across * (0.30 * reach),
        head - direction(p, top) * (0.45 * reach),
        head,
    )
    new = {
        "neck": (
            straight("facing shoulder", p, tip),
            Edge("free", free, EdgeKind.FINISHED),
        ),
        "cf": (straight("cf", head, cf.end, EdgeKind.FOLD),),
    }
    return front.with_edges(e for old in front.edges for e in new.get(old.name, (old,)))


def lay_cut_on(d: Drafting, shoulder: float) -> None:
    """Draw the facing on to the front, its shoulder as long as the back facing's."""
    d.part = "facing"
    front = cut_on(d.sheet.piece("F"), d.n.fc, shoulder)
    d.lay(
        Verb.REDRAW,
        d.sheet.put(front),
        "F",
        "facing of the cowl, drawn on above its fold",
        amounts=(("deep at the centre", "fc"), ("long at the shoulder", shoulder)),
        detail="the shoulder mirrored in the fold",
        lines=(front.edge("free").path,),
    )

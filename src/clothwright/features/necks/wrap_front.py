"""Wrap front: two whole fronts that cross the centre and lie on each other at the waist
(transformations 1.8, 2).

The half is drafted with the edge as far as the centre, drawn in towards the bust point.
When waist and darts are trued it is unfolded and what lies beyond the edge is cut away;
the dart of the other side, where the edge passes below its point, is laid shut there.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_front
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    direction,
    distance,
    from_pair,
    mirror_in,
)
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage, Words
from clothwright.features.chains import Chains
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.necks.neck_contour import contour_front
from clothwright.features.necks.wrap_rules import (
    CROSSING,
    DRAWN_IN,
    SRC,
    WRAP,
    upper_edge,
    wrap_findings,
)
from clothwright.features.necks.wrap_seams import wrap_joints, wrap_seams
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    redraw,
    unfold,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SHORT = 0.5
"""The stay tape is so much shorter than the edge, cm (transformations 2, V)."""

_CRUMB = 0.1
"""What is shorter is no line of its own, cm."""


class WrapFront(Feature):
    """Front in two whole pieces that cross."""

    kind: Literal["wrap front"] = "wrap front"
    title: ClassVar[str] = "Wrap front"
    sentence: ClassVar[str] = (
        "The two fronts [wrap], each {crossing} beyond the centre at the waist, their "
        "edges drawn in by {contour}."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("crossing", ("F",), ("neck", OVER), (1.0, 0.0)),
        Pin("width", ("F",), ("neck", "shoulder")),
    )
    shows: ClassVar[Shown] = {
        "cn": ("F.neck",),
        "neck front": ("F.neck",),
        "strip w": ("FF.foot", "FF.free"),
    }
    seams: ClassVar[Mapping[str, str]] = {
        "S61": "fronts of a wrap on each other at the waist",
        "S62": "foot of a wrap's facing, caught in the waist",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"neckline", "wrap"})
    needs: ClassVar[dict[str, str]] = {
        "waist seam": "the two fronts are held by a waist seam; add one",
    }
    clashes: ClassVar[dict[str, str]] = {
        "neckline": "an order has one front neckline",
        "front panel seam": "a wrap is unfolded from a front in one piece; take a side "
        'dart or a "bust dart" in place of the princess line',
        "front yoke": "a yoke's seam would cut through both crossing fronts; leave it "
        "off",
        "empire seam": "an empire seam is not yet cut through crossing fronts; leave "
        "it off",
        "laid waist dart": "gathers at the waist would lie where the fronts cross; "
        "lead the bust dart to the waist as a dart, or elsewhere",
        "upper bust dart": "a dart in the edge, or above it, would stretch it; leave "
        "the bust dart at the side or lead it to the waist",
    }

    crossing: Annotated[
        Length | None,
        Number(
            "wx",
            "wx",
            "crossing of the centre front at the waist",
            SRC,
            low=6.0,
            high=16.0,
            usual=CROSSING,
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
            high=6.0,
            usual=(0.0, 1.5),
        ),
    ] = None
    contour: Annotated[
        Length | None,
        Number(
            "cn",
            "cn",
            "contour of the front neck, sent to the bust dart",
            "transformations 1.8",
            low=0.0,
            high=DRAWN_IN[1],
        ),
    ] = None
    strip: Annotated[
        Length | None,
        Number(
            "strip_w",
            "strip w",
            "facing beside the edge at the waist",
            "transformations 6",
            low=3.0,
            high=12.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (WRAP,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
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
            Stage(Rank.NECK, "the edge of the wrap", _draw),
            Stage(Rank.CONTOUR, "the edge drawn in", _draw_in),
            Stage(Rank.CLOSURE, "the front unfolded", _unfolded),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return wrap_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return wrap_joints(sheet)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "for the edges of the wrap, a little shorter than each",
            length=_tape(sheet),
        )

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return (Run("F", "neck"),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        tape = _tape(sheet)
        yield Operation(
            Work.STAY,
            "Tape the edges of the wrap",
            (
                f"Tape of {fmt(tape)} on each net line, the edge eased to it over the "
                "bust: it lies on the bias and stretches.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * tape,
            task=Task.STAY,
        )
        if any(s.code == "S61" for s in sheet.seams):
            yield Operation(
                Work.READY,
                "Lay the fronts over each other",
                (
                    "The right over the left, centre on centre; the edge of each ends "
                    f"{fmt(n.wx)} beyond the centre. Baste them within the allowance.",
                ),
                seams=("S61",),
                stitch=Stitch.LOCK,
                seam_type=SeamType.LAPPED,
            )
        if any(s.code == "LS61" for s in sheet.seams):
            yield Operation(
                Work.LINING,
                "Lay the linings of the fronts over each other",
                ("As the fronts, centre on centre. Baste them within the allowance.",),
                seams=("LS61",),
                stitch=Stitch.LOCK,
                seam_type=SeamType.LAPPED,
            )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return wrap_findings(n, sheet)


def _tape(sheet: Sheet) -> float:
    return sheet.length("F", "neck") - _SHORT


def _draw(d: Drafting) -> None:
    """The edge from the shoulder to where it crosses the centre."""
    n = d.n
    d.part = "front"
    c = d.found(
        "C",
        Point(n.X, d["hf"].y + n.Df),
        "where the edges of the wrap cross",
        amounts=(
            ("down from the level of hf", "Df"),
            ("towards the waist beyond the centre", "wx"),
        ),
        detail="on the centre front line, on the way to the other side's waist",
    )
    d.draw(
        "neck front",
        upper_edge(d["Nf′"], c, inward_front(n.sigma_f_new - n.tau)),
        "edge of the wrap, as far as the centre",
        frm=("Nf′", "C"),
        detail="square to the shoulder, then straight",
    )


def _draw_in(d: Drafting) -> None:
    n = d.n
    start = inward_front(n.sigma_f_new - n.phi_n - n.tau)
    contour_front(d, lambda end: upper_edge(end, d["C"], start))


def _unfolded(d: Drafting) -> None:
    """Unfold the front at the centre; cut it away beyond the edge."""
    d.part = "front"
    f = d.sheet.piece("F")
    fold = f.edge("cf").path
    m = mirror_in(fold.start, fold.end)
    waist, shut = _shut_waist(f)
    if waist.length < d.n.wx + 1.0:
        raise PaperError(
            f"the wrap crosses the centre by {d.n.wx:.1f} cm, and half the front waist "
            f"is {waist.length:.1f} cm: make the crossing (wx) less"
        )
    over = waist.between(0.0, d.n.wx).without_crumbs(_CRUMB).moved(m)
    foot = d.found(
        "Wx",
        over.end,
        "end of the edge at the waist of the other side",
        amounts=(("along the waist from the centre", "wx"),),
        detail="its dart laid shut" if shut < d.n.wx else "",
    )
    edge = f.edge("neck").path
    whole = edge + _on_to(edge, foot)
    whole = Path.of(*whole.segments)
    new = [
        Edge("neck", whole),
        Edge(OVER, over.reversed().pinned(whole.end, fold.end)),
    ]
    opened = unfold(f)
    names = [e.name for e in opened.edges]
    old = names[names.index("neck") :]
    bare = replace(opened, marks=f.marks, lines=f.lines)
    sheet = redraw(d.sheet.put(bare), "F", old, new)
    piece = sheet.piece("F").with_lines(InnerLine("centre front", fold))
    if shut < d.n.wx and f.has("leg cf") and piece.contains(m(_point(f))):
        raise PaperError(
            f"the wrap crosses the centre by {d.n.wx:.1f} cm and takes in the point of "
            "the other side's waist dart: make the crossing (wx) less"
        )
    d.lay(
        Verb.UNFOLD,
        sheet.put(piece),
        "F",
        "front unfolded at the centre and cut along the edge to Wx",
        amounts=(("across the centre at the waist", "wx"),),
        frm=("C", "Wx"),
        detail="the other side's waist dart laid shut where the edge passes below it"
        if shut < d.n.wx
        else "the edge ends before the other side's waist dart",
        lines=(whole,),
    )


def _point(f: Piece) -> Point:
    return f.edge("leg cf").path.end


def _shut_waist(f: Piece) -> tuple[Path, float]:
    """The waist of a half from the centre to the side with its dart shut, and how far
    from the centre the dart lies."""
    waist = f.edge("waist").path
    if not f.has("waist side"):
        return waist, waist.length
    point, a, b = _point(f), waist.end, f.edge("leg side").path.end
    rest = f.edge("waist side").path.moved(from_pair(point, b, point, a))
    return waist + rest.pinned(waist.end, rest.end), waist.length


def _on_to(edge: Path, foot: Point) -> Path:
    """The edge from the centre to its foot, running on smoothly."""
    c, third = edge.end, distance(edge.end, foot) / 3
    q = c + edge.end_direction * third
    return Path((Cubic(c, q, foot - direction(q, foot) * third, foot),))

"""Necklines, front and back apart, with one width for both (first garment 3).

A neckline leaves the shoulder square (or tilted by the same angle on both sides of
the seam) and arrives square at the centre, so that both halves flow into each other
when the shoulder is sewn.
"""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_back, inward_front
from clothwright.curves import Path, Point
from clothwright.features.base import Feature, NeckEnd, Number, Pin, Rank, Shown, Stage
from clothwright.features.bodice.back_shoulder import CLOSED_BACK
from clothwright.features.chains import ABOVE, NAPE, NECK_STRIP
from clothwright.features.necks.keyhole import (
    BOUND_NOTE,
    KEYHOLE_NOTE,
    keyhole_notions,
    keyhole_operations,
)
from clothwright.features.necks.neck_contour import (
    BACK_CONTOUR,
    FRONT_CONTOUR,
    MOST_FOLDED,
    contour_back,
    contour_front,
)
from clothwright.features.necks.neck_findings import back_findings, front_findings
from clothwright.features.necks.neck_shapes import (
    BACK_TABLES,
    FRONT_CURVES,
    FRONT_TABLES,
    HOW_FRONT,
    MORE,
    POINTED,
    SHALLOWEST_BACK,
    TILTED,
    V_BACK,
    V_FRONT,
    WINDING,
    BackShape,
    FrontShape,
    back_curve,
)
from clothwright.features.necks.over_head import HEAD_BACK, HEAD_FRONT
from clothwright.features.notions import Notion
from clothwright.features.openings.stand_pieces import BANDED, FOLD, STAND
from clothwright.features.operations import Operation
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Angle, Length

_SRC = "first garment 3.3"


class Neckline(Feature):
    """Front neckline; its width along the shoulder serves the back as well."""

    kind: Literal["neckline"] = "neckline"
    title: ClassVar[str] = "Neckline"
    sentence: ClassVar[str] = (
        "A {shape} [neck], {depth} deep in front and {width} wider than the standard."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("depth", ("FC", "FY", "F"), ("neck", "cf"), (0.0, 1.0)),
        Pin("width", ("FC", "FY", "F"), ("neck", "shoulder")),
    )
    shows: ClassVar[Shown] = {
        "dw": ("FC.neck", "F.neck"),
        "lean": ("FC.neck", "F.neck"),
        "τ": ("FC.neck", "F.neck"),
        "neck front": ("FC.neck", "F.neck"),
        "neck back": ("BC.neck", "B.neck"),
    }
    neck_ends: ClassVar[tuple[NeckEnd, ...]] = (
        NeckEnd("depth", "cf", ("FC", "F", "FY")),
        *(NeckEnd("depth", e, ("FC", "F", "FY")) for e in (STAND, BANDED, FOLD)),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"neckline"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a neckline is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {"neckline": "an order has one front neckline"}

    shape: FrontShape = FrontShape.BOAT
    width: Annotated[
        Length | None,
        Number(
            "dw",
            "dw",
            "width of the neck beyond the standard, along the shoulder",
            "first garment 3.1",
            low=0.0,
            high=14.0,
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number("Df", "Df", "depth of the front neck", _SRC, low=3.0, high=30.0),
    ] = None
    contour: Annotated[
        Length | None,
        Number(
            "cn",
            "cn",
            "contour of the front neck, sent to the bust dart",
            "transformations 1.8",
            low=0.0,
            high=MOST_FOLDED,
        ),
    ] = None
    rise: Annotated[
        Length | None,
        Number(
            "rise",
            "rise",
            "foot of a sweetheart's arcs below its point",
            "transformations 2",
            2.5,
            1.0,
            1.0,
            5.0,
            (2.0, 4.0),
        ),
    ] = None
    slit: Annotated[
        Length | None,
        Number(
            "slit",
            "slit",
            "length of a keyhole below the neck",
            "transformations 2",
            8.0,
            3.0,
            4.0,
            14.0,
            (6.0, 12.0),
        ),
    ] = None
    lean: Annotated[
        Length | None,
        Number(
            "lean",
            "lean",
            "lean of a square neck's side",
            _SRC,
            0.7,
            0.25,
            0.0,
            2.0,
            (0.0, 1.2),
        ),
    ] = None

    tilt: Annotated[
        Angle | None,
        Number(
            "tau",
            "τ",
            "tilt of the neck at the shoulder",
            _SRC,
            low=0.0,
            high=15.0,
            kind=Kind.ANGLE,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        shape = self.shape
        return (FRONT_TABLES[shape], FRONT_CONTOUR[shape], HEAD_FRONT[shape])

    def provides(self) -> frozenset[str]:
        words = {V_FRONT} if self.shape in POINTED else set()
        if self.shape in WINDING:
            words = {*words, "winding neck"}
        if self.shape is FrontShape.SQUARE:
            words = {*words, "square neck"}
        if self.shape in (FrontShape.STANDARD, FrontShape.ROUND):
            words = {*words, "round neck"}
        return self.gives | words

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        if self.tilt is None:
            tilt = 12.0 if self.shape in TILTED else 0.0
            tau = self.numbers()["tilt"]
            yield Given(
                tau.key, tau.symbol, tau.name, tau.kind, tilt, Hand.DEFAULT, _SRC
            )
        if self.shape is FrontShape.BOAT and self.depth is None:
            deep = 3.125 * 2.54 if unit is Unit.IN else 8.0
            yield Given(
                "df_boat",
                "df boat",
                "usual depth of a boat neck",
                Kind.LENGTH,
                deep,
                Hand.DEFAULT,
                _SRC,
            )

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.NECK, "the front neck", self._draw),
            Stage(Rank.CONTOUR, "the front neck drawn in", self._draw_in),
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is not FrontShape.KEYHOLE:
            return ()
        return (BOUND_NOTE if NECK_STRIP in sheet.pieces else KEYHOLE_NOTE,)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        return keyhole_notions() if self.shape is FrontShape.KEYHOLE else ()

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if self.shape is not FrontShape.KEYHOLE:
            return ()
        return keyhole_operations(fmt, bound=NECK_STRIP in sheet.pieces)

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        hf = d["hf"]
        c = d.found(
            "C",
            Point(n.X, hf.y + n.Df),
            "centre of the front neck",
            amounts=(
                ("down from the level of hf", "Df"),
                ("half the neck is {} wide, level, before tightening", n.X - d["Nf"].x)
                if n.phi_f
                else ("half the neck is {} wide, level", n.X - d["Nf"].x),
            ),
            detail="on the centre front line",
        )
        p = d["Nf′"]
        if c.y - p.y < 2.5:
            raise PaperError(
                "the front neck is too shallow: its centre would stand above the "
                "shoulder end; make it deeper (Df) or narrower (dw)"
            )
        path = self._curve(n, p, c, n.sigma_f_new)
        as_block = n.dw == 0 and n.phi_f == 0 and n.tau == 0
        if self.shape is FrontShape.STANDARD and as_block:
            path = d.line("front neck")
        d.draw(
            "neck front",
            path,
            f"{self.shape.value} neck of the front",
            frm=("Nf′", "C"),
            detail=HOW_FRONT[self.shape],
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        before = self._curve(n, sheet.points["Nf"], sheet.points["C"], n.sigma_f)
        return front_findings(n, sheet, self.shape, before)

    def _draw_in(self, d: Drafting) -> None:
        n = d.n
        contour_front(
            d, lambda end: self._curve(n, end, d["C"], n.sigma_f_new - n.phi_n)
        )

    def _curve(self, n: Numbers, end: Point, c: Point, slope: float) -> Path:
        """The neck from a shoulder end to the centre, the shoulder sloping so."""
        start = inward_front(slope - n.tau)
        more = [n[key] for key in MORE.get(self.shape, ())] or [0.0]
        return FRONT_CURVES[self.shape](end, c, start, slope - n.tau, *more)


class BackNeckline(Feature):
    """Back neckline of a closed back."""

    kind: Literal["back neckline"] = "back neckline"
    title: ClassVar[str] = "Back neckline"
    sentence: ClassVar[str] = "The [back neck] is {shape}, {depth} deep."
    pins: ClassVar[tuple[Pin, ...]] = (
        *(Pin("depth", ("BC", "B"), ("neck", e), (0.0, 1.0)) for e in (NAPE, ABOVE)),
        Pin("depth", ("BC", "BY", "B"), ("neck", "cb"), (0.0, 1.0)),
    )
    neck_ends: ClassVar[tuple[NeckEnd, ...]] = (
        NeckEnd("depth", "cb", ("BC", "B", "BY")),
        *(NeckEnd("depth", e, ("BC", "B")) for e in (NAPE, ABOVE)),
        *(NeckEnd("depth", e, ("BC", "B", "BY")) for e in (STAND, BANDED, FOLD)),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"back neck"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a back neckline is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "back neck": "a back has one neckline; leave one of the two off"
    }

    shape: BackShape = BackShape.BOAT
    depth: Annotated[
        Length | None,
        Number("Db", "Db", "depth of the back neck", _SRC, low=1.0, high=30.0),
    ] = None
    contour: Annotated[
        Length | None,
        Number(
            "cnb",
            "cnb",
            "contour of the back neck",
            "transformations 1.8",
            low=0.0,
            high=MOST_FOLDED,
        ),
    ] = None

    def provides(self) -> frozenset[str]:
        words = {V_BACK} if self.shape is BackShape.V else set()
        if self.shape in (BackShape.STANDARD, BackShape.ROUND, BackShape.BOAT):
            words = {*words, "high back neck"}
        return self.gives | words

    def tables(self) -> tuple[RuleTable, ...]:
        shape = self.shape
        own = (BACK_TABLES[shape], BACK_CONTOUR[shape], HEAD_BACK[shape])
        return (*own, CLOSED_BACK)

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.NECK, "the back neck", self._draw),
            Stage(Rank.CONTOUR, "the back neck drawn in", self._draw_in),
        )

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "back"
        c = d.found(
            "Cb",
            Point(0.0, d["hb"].y + n.Db),
            "centre of the back neck",
            amounts=(("down from the level of hb", "Db"),),
            detail="on the centre back line",
        )
        p = d["Nb′"]
        as_block = n.dw == n.phi_b == n.theta_s == n.tau == 0
        if self.shape is BackShape.STANDARD and as_block:
            path = d.line("back neck")
        else:
            if c.y - p.y < SHALLOWEST_BACK - 1e-9:
                raise PaperError(
                    "the back neck is too shallow: its centre would stand above the "
                    "shoulder end; make it deeper (Db), or the neck narrower (dw)"
                )
            start = inward_back(n.sigma_b_new + n.tau)
            path = back_curve(self.shape, p, c, start)
        d.draw(
            "neck back",
            path,
            f"{self.shape.value} neck of the back",
            frm=("Cb", "Nb′"),
            detail="square to the centre back and to the shoulder",
        )

    def _draw_in(self, d: Drafting) -> None:
        slope = d.n.sigma_b_new + d.n.tau

        def curve(end: Point, less: float) -> Path:
            return back_curve(self.shape, end, d["Cb"], inward_back(slope - less))

        contour_back(d, curve)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        p = sheet.points
        slope = inward_back(n.sigma_b + n.tau)
        return back_findings(n, sheet, back_curve(self.shape, p["Nb"], p["Cb"], slope))

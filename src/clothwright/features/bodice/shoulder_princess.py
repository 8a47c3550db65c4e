"""[Princess lines] from the shoulder, front and back (first garment 7).

Both start at the same share of what is left of the shoulder, so that the halves are
sewn half to half. With a narrow neck the back shoulder dart is part of the seam.
"""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.back_shoulder_dart import OPEN, OpenShoulder
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Point, direction, distance, midpoint, mix
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.back_dart import LEG_NECK, close_about_point, has_dart
from clothwright.features.bodice.back_princess import (
    BACK_PANELS,
    back_findings,
    split_back,
)
from clothwright.features.bodice.back_shoulder import AT_ITS_POINT, NARROW_NECK
from clothwright.features.bodice.front_beside import (
    divide_beside,
    findings_beside,
    open_rest,
    upper_beside,
)
from clothwright.features.bodice.front_beside_rules import BESIDE, BESIDE_ONLY
from clothwright.features.bodice.front_panels import (
    EASE,
    FRONT_PANELS,
    panel_findings,
    split_panels,
)
from clothwright.features.bodice.panel_lines import (
    BACK,
    FRONT,
    UpperCurve,
    draw_line,
    from_shoulder,
    neck_findings,
    start_findings,
)
from clothwright.features.bodice.shoulder_beside import (
    BESIDE_S,
    PAST,
    SHOULDER_BESIDE,
    divide_beside_dart,
    findings_beside_dart,
    start_on_shoulder,
    upper_beside_dart,
)
from clothwright.features.bodice.side_dart import SIDE_DART
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    PaperError,
    Sheet,
    redraw,
    spot_on,
)
from clothwright.rules import Given, Kind, Numbers, RuleTable
from clothwright.truing import arc_like
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 7"

_NO_WEDGE = RuleTable("shoulder princess line")


@_NO_WEDGE.rule(
    "φa",
    "turn that tightens the front armhole",
    kind=Kind.ANGLE,
    key="phi_a",
    source=_SRC,
    formula="none: the line misses the armhole",
)
def _no_turn() -> float:
    return 0.0


_SEAM_DART = RuleTable("back shoulder dart in the panel seam")


@_SEAM_DART.rule(
    "sd",
    "back shoulder dart",
    key="sd",
    source=f"{_SRC}.3",
    formula="1.2 cm, none in a neck that is wide enough to be tightened",
    low=0.0,
    high=2.0,
)
def _dart(dw: float) -> float:
    return 1.2 if dw < NARROW_NECK else 0.0


@_SEAM_DART.rule(
    "ds",
    "middle of the back shoulder dart from hb, along the shoulder",
    key="dart_at",
    source=f"{_SRC}.3",
    formula="at the same share of what is left of the shoulder as in front",
)
def _middle(Sb: float, Lrb: float, share_s: float, sd: float) -> float:
    return Sb - Lrb + share_s * Lrb + sd / 2


def _point(xd: float, y_Pd: float, *open_: float) -> Point:
    """7 cm square below the middle of the dart, kept within 1 cm of the line from
    there to Pd (7.3)."""
    shoulder = OpenShoulder.of(*open_)
    middle, at = midpoint(shoulder.inner, shoulder.outer), shoulder.point
    on_line = mix(middle, Point(xd, y_Pd), (at.y - middle.y) / (y_Pd - middle.y))
    return Point(on_line.x + clip(at.x - on_line.x, -1.0, 1.0), at.y)


@_SEAM_DART.rule(
    "x(Ps)",
    "point of the back shoulder dart, across",
    key="x_Ps",
    source=f"{_SRC}.3",
    formula="square below the middle of the dart, within 1 cm of the line to Pd",
    needs=("xd", "y_Pd", *OPEN),
)
def _x_point(*numbers: float) -> float:
    return _point(*numbers).x


class ShoulderPrincess(Feature):
    """Princess lines from the shoulder to the waist, front and back."""

    kind: Literal["shoulder princess"] = "shoulder princess"
    title: ClassVar[str] = "Shoulder princess"
    sentence: ClassVar[str] = (
        "[Princess lines] from the shoulder, front and back, eased {ease} over the "
        "bust."
    )
    shows: ClassVar[Shown] = {
        "ep": ("FC.panel", "F.dart low"),
        "share s": ("FC.panel", "F.dart low"),
        "front panel": ("FC.panel", "F.dart low"),
        "beside f": ("FC.panel",),
        "rest": ("FC.panel",),
        "set-back": ("FS.dart low",),
        "Qb": ("BC.panel",),
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {
            "front panels",
            "front panel seam",
            "back panels",
            "back panel seam",
            "shoulder line",
        }
    )
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off",
        "back panels": "the back waist dart can go into one line only; leave one off",
    }

    ease: Annotated[Length | None, EASE] = None
    share: Annotated[
        Ratio | None,
        Number(
            "share_s",
            "share s",
            "start of the line, share of the shoulder from the neck",
            f"{_SRC}.1",
            0.5,
            None,
            0.35,
            0.65,
            (0.4, 0.6),
            Kind.RATIO,
        ),
    ] = None
    beside: Annotated[Length | None, BESIDE_S] = None
    """How far the front line passes beside the bust point; over it when left out. Up to
    3 cm it passes the bust dart, which stays at the side; further out it crosses that.
    """

    @property
    def _crosses(self) -> bool:
        """True for a line that crosses the bust dart beside its point."""
        return self.beside is not None and self.beside > PAST

    def forbids(self) -> Mapping[str, str]:
        if self.beside is None:
            return self.clashes
        return {**self.clashes, **BESIDE_ONLY}

    def said(self) -> str:
        if self.beside is None:
            return self.sentence
        where = (
            "side of" if self.beside > 0 else "side of (below nought, to the centre of)"
        )
        says = (
            "[Panel lines] from the shoulder, front and back; the front one passes "
            f"{{beside}} to the {where} the bust point"
        )
        return says + (
            "." if self._crosses else ", and the bust dart stays at the side."
        )

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its numbers; a line that passes no dart has no ease over the bust."""
        for it in super().given(unit):
            if self.beside is None or it.key != "ep" or self.ease is not None:
                yield it

    def tables(self) -> tuple[RuleTable, ...]:
        front: tuple[RuleTable, ...] = (SIDE_DART, SHOULDER_BESIDE)
        if self.beside is None or self._crosses:
            front = (BESIDE if self._crosses else FRONT_PANELS,)
        return (*front, BACK_PANELS, _NO_WEDGE, _SEAM_DART, AT_ITS_POINT)

    def stages(self) -> tuple[Stage, ...]:
        out = (
            Stage(Rank.BACK_SHOULDER, "the back shoulder dart", self._close),
            Stage(Rank.FRONT_PANELS, "front princess line", self._front),
            Stage(Rank.BACK_PANELS, "back princess line", self._back),
        )
        if not self._crosses:
            return out
        return (*out, Stage(Rank.YOKE_DART, "the rest of the bust dart", open_rest))

    def _close(self, d: Drafting) -> None:
        if d.n.sd > 0 and d.n.dw >= NARROW_NECK:
            raise PaperError(
                f"a neck {NARROW_NECK:g} cm wider than the standard, or more, leaves "
                "no room for a dart in the back shoulder: set back_shoulder_dart to "
                "0, or make the neck narrower"
            )
        close_about_point(d)

    def _front(self, d: Drafting) -> None:
        if self.beside is not None:
            if self.ease is not None:
                raise PaperError(
                    "a panel line beside the bust point is eased by no more than is "
                    "left of the dart: leave its ease (ep) out"
                )
            if not self._crosses:
                divide_beside_dart(d)
                return
        d.part = "front"
        qf = start_on_shoulder(d)
        if self._crosses:
            divide_beside(d, "shoulder")
            return
        split_panels(d, "shoulder", _upper_front(d.sheet, qf))

    def _back(self, d: Drafting) -> None:
        d.part = "back"
        if has_dart(d.sheet):  # its legs are the line's upper part
            lower = arc_like(d["Ps"], d["Pd"], direction(d["Pd"], d["D1b"]))
            d.draw(
                "back panel, lower",
                lower,
                "back panel line below the shoulder dart",
                frm=("Ps", "Pd"),
                detail="an even curve that runs into the dart's centre leg",
            )
            split_back(d, CornerAfter(LEG_NECK), lower)
            part = Edge("shoulder", d.sheet.edge("BC", "shoulder neck").path)
            d.sheet = redraw(d.sheet, "BC", ["shoulder neck"], [part])
            return
        at = mix(d["Nb′"], d["Tb"], d.n.share_s)
        qb = d.found(
            "Qb",
            at,
            "start of the back panel line on the shoulder",
            amounts=(("along the shoulder from Nb′", distance(d["Nb′"], at)),),
        )
        upper = _upper_back(d.sheet, qb).path
        draw_line(d, BACK, upper)
        split_back(d, spot_on(d.sheet.piece("B"), "shoulder", qb), upper)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from back_findings(n, sheet)
        qf = sheet.points["Qf"]
        if self.beside is None:
            yield from panel_findings(n, sheet)
            yield from start_findings(FRONT, _upper_front(sheet, qf))
        elif self._crosses:
            yield from findings_beside(n, sheet)
            upper = upper_beside(sheet, n.theta + n.phi_n, "shoulder")
            yield from start_findings(FRONT, upper)
        else:
            yield from findings_beside_dart(n, sheet)
            yield from start_findings(FRONT, upper_beside_dart(sheet, qf))
        if "Qb" in sheet.points:
            yield from start_findings(BACK, _upper_back(sheet, sheet.points["Qb"]))
        for line, code in ((FRONT, "FC"), (BACK, "BC")):
            yield from neck_findings(line, sheet.piece(code))
        if n.Lr < 4.0:
            yield Finding(
                "P7",
                Severity.REFUSE,
                "Too little shoulder is left for a line that starts on it; 4 cm must "
                "stay.",
                "dw",
                "Make the neck narrower (dw), or start at the armhole.",
                {"Lr": n.Lr},
            )
        if n.ta > 0 and (self.beside is None or self._crosses):
            yield Finding(
                "P8",
                Severity.WARN,
                "A line from the shoulder cannot tighten the armhole.",
                "ta",
                "Set the tightening to 0, or start the line at the armhole.",
                {"ta": n.ta},
            )


def _upper_front(sheet: Sheet, qf: Point) -> UpperCurve:
    p = sheet.points
    return from_shoulder(FRONT, qf, p["BP"], p["D1"], p["Tf"] - p["Nf′"])


def _upper_back(sheet: Sheet, qb: Point) -> UpperCurve:
    p = sheet.points
    return from_shoulder(BACK, qb, p["Pd"], p["D1b"], p["Tb"] - p["Nb′"])

"""Vent of a skirt at the foot of the centre back seam (transformations §7)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK
from clothwright.curves import Path, Point
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.skirts.skirt_zip import seamed_back
from clothwright.features.wholes import below_waist
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations §7"

_BETWEEN = 6.0
"""Seam left between the end of the zip and the vent, cm (common practice)."""


def back_at_hem(sheet: Sheet) -> str:
    """The piece at whose centre back a vent can be: a skirt's, a dress's, or a
    torso's."""
    return next(c for c in (BACK, "PB", "PBC", "BC", "B") if c in sheet.pieces)


class Shape(Enum):
    """How the foot of the seam opens."""

    VENT = "vent"
    """One edge lies over the other: the extension is slanted at its top and wider at
    the hem."""

    SLIT = "slit"
    """The edges meet: both extensions are facings, straight down."""


class Vent(Feature):
    """Vent or slit in the centre back seam."""

    kind: Literal["vent"] = "vent"
    title: ClassVar[str] = "Vent"
    sentence: ClassVar[str] = (
        "The centre back seam [ends] in a {shape}, {height} high and {width} wide."
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S36": "top of a skirt's vent",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"vent"})
    needs: ClassVar[dict[str, str]] = {
        "straight back": "a vent is for a straight skirt; a flared one needs none"
    }
    clashes: ClassVar[dict[str, str]] = {}

    height: Annotated[
        Length | None,
        Number(
            "v",
            "v",
            "height of the vent from the hem",
            _SRC,
            18.0,
            7.0,
            8.0,
            50.0,
            (15.0, 30.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "v_w",
            "v w",
            "width of the vent at its top",
            _SRC,
            4.0,
            1.5,
            2.5,
            8.0,
            (3.5, 6.0),
        ),
    ] = None
    wider: Annotated[
        Length | None,
        Number("v_more", "v more", "wider at the hem by", _SRC, 1.0, 0.375, 0.0, 3.0),
    ] = None
    shape: Shape = Shape.VENT

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the vent", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n = d.n
        back = back_at_hem(d.sheet)
        if back == BACK:
            seamed_back(d)
        d.part = "back" if back.startswith("B") else "skirt back"
        slit = self.shape is Shape.SLIT
        cb = d.sheet.edge(back, "cb").path
        foot = cb.start
        top = d.point("Vb", "Mb", "top of the vent on the centre back", up="v")
        slant = 0.0 if slit else n.v_w
        wide = n.v_w + (0.0 if slit else n.v_more)
        out = d.found(
            "Vo",
            top + Point(-n.v_w, slant),
            "upper corner of the vent",
            amounts=(("outside the centre back", "v_w"), ("below Vb", slant)),
        )
        hem = d.found(
            "Vm",
            foot - Point(wide, 0.0),
            "corner of the vent at the hem",
            amounts=(("outside the centre back", wide),),
        )
        edges = (
            Edge("vent", Path.line(hem, out), EdgeKind.FINISHED),
            Edge("vent top", Path.line(out, top)),
            Edge(
                "cb", cb.between(cb.length_to_point(top), cb.length).pinned(top, cb.end)
            ),
        )
        sheet = redraw(d.sheet, back, ["cb"], edges)
        piece = sheet.piece(back).with_lines(
            InnerLine(f"{self.shape.value} fold, centre back", Path.line(top, foot))
        )
        d.lay(
            Verb.REDRAW,
            sheet.put(piece),
            f"{back}.vent",
            f"{self.shape.value} at the foot of the centre back seam",
            frm=("Vb", "Vo", "Vm"),
            detail="ruled from Vb to Vo and on to Vm, the hem run on to Vm",
            lines=tuple(e.path for e in edges),
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.shape is Shape.SLIT:
            yield (
                f"Sew the centre back down to the slit, {fmt(n.v)} above the hem, and "
                "fold both facings in along the centre back."
            )
            return
        yield (
            f"Vent: sew the centre back down to {fmt(n.v)} above the hem, and on along "
            "the slanted top. The left back folds in along the centre back; the right "
            "lies flat behind it."
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _top(t)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        back = back_at_hem(sheet)
        seam = sheet.length(back, "cb")
        if "SYB" in sheet.pieces:  # the zip begins in the yoke
            seam += sheet.length("SYB", "cb")
        held = n.z_S if "z_S" in n else 0.0
        if back in ("PB", "PBC"):
            held = n.z - below_waist(n)
        elif back != BACK:  # the zip runs down through the waist
            path = sheet.edge(back, "cb").path
            held = seam - path.length_to_point(sheet.points["CBz"]) + n.z
        if seam < held + _BETWEEN:
            yield Finding(
                "V1",
                Severity.REFUSE,
                f"The vent leaves {max(0.0, seam - held):.1f} cm of seam over it.",
                "v",
                "Make the vent (v) lower, or the zip (zs) shorter.",
                {"seam": seam, "zip": held},
            )
        if n.L - n.v < n.WH + 5.0:
            yield Finding(
                "V2",
                Severity.WARN,
                "The vent reaches up to the hip, where it will pull open.",
                "v",
                "Make the vent lower.",
                {"v": n.v, "WH": n.WH},
            )


def _top(t: Chains) -> list[Seam]:
    """The top of the vent, to its twin."""
    chain = t.chain((back_at_hem(t.sheet), "vent top", True))
    return [
        Seam(
            "S36",
            "top of the vent",
            chain,
            chain,
            "centre back",
            "edge",
            Ease.about(0.0, 0.05),
            kind=SeamKind.TWIN,
        )
    ]

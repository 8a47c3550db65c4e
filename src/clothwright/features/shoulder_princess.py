"""Princess lines from the shoulder, front and back (first garment 7).

Both start at the same share of what is left of the shoulder, so that the halves are
sewn half to half. The back shoulder carries no dart here.
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import direction, distance, mix
from clothwright.features.back_princess import BACK_PANELS, back_findings, split_back
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.front_panels import (
    EASE,
    FRONT_PANELS,
    panel_findings,
    split_panels,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import arc_like
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


class ShoulderPrincess(Feature):
    """Princess lines from the shoulder to the waist, front and back."""

    kind: Literal["shoulder princess"] = "shoulder princess"
    title: ClassVar[str] = "Shoulder princess"
    sentence: ClassVar[str] = (
        "Princess lines from the shoulder, front and back, eased {ease} over the bust."
    )
    gives: ClassVar[frozenset[str]] = frozenset(
        {"front panels", "front panel seam", "back panels", "back panel seam"}
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

    def tables(self) -> tuple[RuleTable, ...]:
        return (FRONT_PANELS, BACK_PANELS, _NO_WEDGE)

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.FRONT_PANELS, "front princess line", self._front),
            Stage(Rank.BACK_PANELS, "back princess line", self._back),
        )

    def _front(self, d: Drafting) -> None:
        d.part = "front"
        at = mix(d["Nf′"], d["Tf"], d.n.share_s)
        qf = d.found(
            "Qf",
            at,
            "start of the front panel line on the shoulder",
            amounts=(("along the shoulder from Nf′", distance(d["Nf′"], at)),),
        )
        split_panels(d, "shoulder", qf)

    def _back(self, d: Drafting) -> None:
        d.part = "back"
        at = mix(d["Nb′"], d["Tb"], d.n.share_s)
        qb = d.found(
            "Qb",
            at,
            "start of the back panel line on the shoulder",
            amounts=(("along the shoulder from Nb′", distance(d["Nb′"], at)),),
        )
        upper = arc_like(qb, d["Pd"], direction(d["Pd"], d["D1b"]))
        split_back(d, "shoulder", upper)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from panel_findings(n, sheet)
        yield from back_findings(n, sheet)
        if n.Lr < 4.0:
            yield Finding(
                "P7",
                Severity.REFUSE,
                "Too little shoulder is left for a line that starts on it; 4 cm must "
                "stay.",
                "dw",
                "Make the neck narrower, or start at the armhole.",
                {"Lr": n.Lr},
            )
        if n.ta > 0:
            yield Finding(
                "P8",
                Severity.WARN,
                "A line from the shoulder cannot tighten the armhole.",
                "ta",
                "Set the tightening to 0, or start the line at the armhole.",
                {"ta": n.ta},
            )

"""The empire seam: front and back divided below the bust, the waist darts closed in the
midriff (transformations 1.5, 1.8).

Above the seam the darts stay and take in a little more than the block, so that the seam
lies close under the bust. It is cut when everything else is drafted, as a yoke is.
"""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bodice.empire_cut import (
    ABOVE_WAIST,
    BACK,
    FRONT,
    level_line,
)
from clothwright.features.bodice.empire_panels import (
    PANEL_IN_MIDRIFF,
    Midriff,
    divide_half,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    PaperError,
    Sheet,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 1.5, 1.8"

EMPIRE = RuleTable("empire seam")


@EMPIRE.rule(
    "ue",
    "empire seam below the bust point",
    key="ue",
    source=_SRC,
    formula="BUB",
    low=4.0,
    high=14.0,
)
def _under_bust(BUB: float) -> float:
    return BUB


def _contour(key: str, half: str, cm: float, inch: float) -> Number:
    return Number(
        key,
        key.replace("_", " "),
        f"what the {half} waist dart takes in more at the empire seam, each half",
        "transformations 1.8",
        cm,
        inch,
        0.0,
        1.5,
        (0.2, 1.0),
    )


class EmpireSeam(Feature):
    """Seam below the bust, front and back."""

    kind: Literal["empire seam"] = "empire seam"
    title: ClassVar[str] = "Empire seam"
    sentence: ClassVar[str] = (
        "Below the bust there is an [empire seam], {depth} under the bust point, drawn "
        "in by {front} in front and {back} behind."
    )
    seams: ClassVar[Mapping[str, str]] = PANEL_IN_MIDRIFF
    gives: ClassVar[frozenset[str]] = frozenset({"empire seam"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "an empire seam is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "open back": "an open back leaves no paper for an empire seam",
        "front yoke": "a front is cut across once only; leave the yoke or the empire "
        "seam off",
        "back yoke": "a back is cut across once only; leave the yoke or the empire "
        "seam off",
        "laid waist dart": "the empire seam lies above the waist, where the bust dart "
        "would be gathered; lead it to the waist as a dart",
    }

    depth: Annotated[
        Length | None,
        Number(
            "ue",
            "ue",
            "empire seam below the bust point",
            _SRC,
            low=4.0,
            high=14.0,
            usual=(5.5, 10.0),
        ),
    ] = None
    front: Annotated[Length | None, _contour("ce_f", "front", 0.6, 0.25)] = None
    back: Annotated[Length | None, _contour("ce_b", "back", 0.3, 0.125)] = None
    midriff: Midriff = Midriff.TAPED

    def said(self) -> str:
        if self.midriff is Midriff.TAPED:
            return self.sentence
        return f"{self.sentence[:-1]}; the midriff below is {{midriff}} in panels."

    def tables(self) -> tuple[RuleTable, ...]:
        return (EMPIRE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the empire seam", self._apply),)

    def _apply(self, d: Drafting) -> None:
        level = d.n.y_BP + d.n.ue
        if d.n.yW - level < ABOVE_WAIST:
            raise PaperError(
                f"the empire seam lies only {max(0.0, d.n.yW - level):.1f} cm above "
                f"the waist; {ABOVE_WAIST:g} cm must stay: make it less deep (ue)"
            )
        outer = d.sheet.piece("B" if "B" in d.sheet.pieces else "BS")
        side = outer.edge("side").path
        at = side.meets(level_line(level))
        if not at:
            raise PaperError(
                "the empire seam misses the side: make it deeper (ue), or take NBP "
                "again"
            )
        up = side.length - at[0][0]
        for h in (BACK, FRONT):
            divide_half(d, h, level, up, self.midriff)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        total = 2 * (n.ce_f + n.ce_b)
        if total > 2.5 + 1e-6:
            yield Finding(
                "E1",
                Severity.WARN,
                f"The empire seam is drawn in by {total:.1f} cm in all; 1.5 cm to "
                "2.5 cm is usual.",
                "ce",
                "Pin it on a toile first.",
                {"in all": total},
            )
        if self.midriff is Midriff.SEAMED and not _in_panels(sheet):
            yield Finding(
                "E2",
                Severity.NOTE,
                "The empire seam goes over no panel seam: none is sewn below it.",
                "ue",
                "Leave midriff out of the empire seam, or take princess lines.",
            )


def _in_panels(sheet: Sheet) -> bool:
    return any(code in sheet.pieces for code in ("FMS", "BMS"))

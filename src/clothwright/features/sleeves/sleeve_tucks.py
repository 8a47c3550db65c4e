"""Tucks round the end of a straight sleeve (transformations 10)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Rank, Shown, Stage
from clothwright.features.level_tucks import (
    Tucks,
    apart_findings,
    fold_length,
    lay_tucks,
    sewing,
)
from clothwright.features.operations import Operation
from clothwright.features.sleeves.sleeve_lengths import long_where_left_out
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Numbers, Rule
from clothwright.units.fields import Length, Ratio

_OF = Tucks("sleeve", "sl", "on the sleeve")

_SLEEVE = "SL"


class SleeveTucks(Feature):
    """Tucks round the end of a sleeve."""

    kind: Literal["sleeve tucks"] = "sleeve tucks"
    title: ClassVar[str] = "Tucks on the sleeve"
    sentence: ClassVar[str] = (
        "Round the end of the sleeve lie {count} [tucks], {depth} deep and {apart} "
        "apart, the lowest {above} from its hem."
    )
    shows: ClassVar[Shown] = dict.fromkeys(
        ("n tucks sl", "deep sl", "apart sl", "above sl"), ("SL.hem",)
    )
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve tucks"})
    needs: ClassVar[dict[str, str]] = {
        "straight sleeve": "tucks run round a straight sleeve; set elbow = "
        '"straight" of the "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "sleeve hem": "tucks run level round a plain sleeve; leave them off, or the "
        "other hem",
        "sleeve end": "tucks lie above the sleeve's own hem; leave them off, or the "
        "band or cuff",
        "raglan": "a raglan is cut in two along the arm, and tucks would not meet "
        "there; leave the tucks off",
    }

    count: Annotated[Ratio | None, _OF.many(3.0)] = None
    depth: Annotated[Length | None, _OF.deep((0.3, 0.125), (0.2, 2.0))] = None
    apart: Annotated[Length | None, _OF.gap((0.6, 0.25), (0.2, 5.0))] = None
    above: Annotated[Length | None, _OF.lowest((3.5, 1.5), (2.5, 30.0))] = None

    def rewritten(
        self, rules: Mapping[str, Rule], given: Collection[str]
    ) -> Mapping[str, Rule]:
        """A sleeve whose length is left out goes to the wrist."""
        return long_where_left_out(rules, given)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LAID_OPEN, "the tucks of the sleeve", _draft),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield sewing(
            n,
            _OF,
            fmt,
            "Sew the tucks of the sleeves",
            "Folds meet where the seam under the arm is sewn.",
            2 * fold_length(sheet.piece(_SLEEVE)),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from apart_findings(n, _OF, "ST1")


def _draft(d: Drafting) -> None:
    d.part = "sleeve"
    if _SLEEVE not in d.sheet.pieces:
        raise PaperError(
            "tucks run round a sleeve in one piece; leave the tucks of the sleeve off"
        )
    piece = d.sheet.piece(_SLEEVE)
    seam = piece.edge("underarm front").path
    lay_tucks(d, _OF, {_SLEEVE: "hem"}, {_SLEEVE: seam.start.y})

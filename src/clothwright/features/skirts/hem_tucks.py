"""Tucks above the hem of a straight skirt that is gathered (transformations 10)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.base import Feature, Rank, Shown, Stage
from clothwright.features.level_tucks import (
    Tucks,
    apart_findings,
    fold_length,
    lay_tucks,
    sewing,
)
from clothwright.features.operations import Operation
from clothwright.features.skirts.gathered_skirt import TIERS
from clothwright.features.wholes import zip_end
from clothwright.findings import Finding
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length, Ratio

_OF = Tucks("hem", "h", "above the hem")

_BODIES = (FRONT, BACK, "PF", "PB", *TIERS)
"""Pieces that may end in the hem."""

_BELOW_ZIP = 2.0
"""They keep so far below a zip, cm (our own)."""


class HemTucks(Feature):
    """Tucks above the hem of a skirt."""

    kind: Literal["hem tucks"] = "hem tucks"
    title: ClassVar[str] = "Tucks above the hem"
    sentence: ClassVar[str] = (
        "Above the hem of the skirt lie {count} [tucks], {depth} deep and {apart} "
        "apart, the lowest {above} from it."
    )
    shows: ClassVar[Shown] = dict.fromkeys(
        ("n tucks h", "deep h", "apart h", "above h"),
        ("SF.hem", "PF.hem", *(f"{c}.hem" for c in TIERS)),
    )
    gives: ClassVar[frozenset[str]] = frozenset({"hem tucks"})
    needs: ClassVar[dict[str, str]] = {
        "level hem": "tucks lie level along a straight hem: take a gathered skirt, or "
        "cut the skirt of the dress gathered"
    }
    clashes: ClassVar[dict[str, str]] = {
        "open edges": "a centre that opens has a facing down to the hem, and tucks "
        "would be folded in with it; leave the tucks off",
        "button stand": "a button stand has a facing down to the hem, and tucks would "
        "be folded in with it; leave the tucks off",
        "crossing skirt": "the edge of a front that crosses runs down to the hem, and "
        "tucks would be folded in with it; leave the tucks off",
    }

    count: Annotated[Ratio | None, _OF.many(3.0)] = None
    depth: Annotated[Length | None, _OF.deep((1.0, 0.375), (0.2, 4.0))] = None
    apart: Annotated[Length | None, _OF.gap((1.5, 0.625), (0.2, 10.0))] = None
    above: Annotated[Length | None, _OF.lowest((6.0, 2.5), (4.0, 40.0))] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.LAID_OPEN, "the tucks above the hem", _draft),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        # half a piece is drawn; a tier serves front and back
        long = sum(
            fold_length(sheet.piece(c)) * (4 if c in TIERS else 2) for c in _hems(sheet)
        )
        meets = "Folds meet where the sides are sewn."
        yield sewing(n, _OF, fmt, "Sew the tucks above the hem", meets, long)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from apart_findings(n, _OF, "HT1")


def _hems(sheet: Sheet) -> Mapping[str, str]:
    """The pieces that end in the hem."""
    return {
        c: "hem" for c in _BODIES if c in sheet.pieces and sheet.piece(c).has("hem")
    }


def _draft(d: Drafting) -> None:
    d.part = "skirt"
    n, hems = d.n, _hems(d.sheet)
    ends = {
        FRONT: n.z_S if "z_S" in n else 0.0,
        "PF": zip_end(n) if "z" in n else 0.0,
    }
    ends |= {BACK: ends[FRONT], "PB": ends["PF"]}
    tops = {c: d.sheet.piece(c).outline.bounds()[1] for c in hems}
    ceilings = {
        c: tops[c] + (ends[c] + _BELOW_ZIP if ends.get(c) else 0.0) for c in hems
    }
    lay_tucks(d, _OF, hems, ceilings)

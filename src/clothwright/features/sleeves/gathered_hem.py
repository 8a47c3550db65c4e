"""A sleeve that is full at its end and gathered into a band or a cuff: puffed at the
bottom, or a bishop's (transformations 4)."""

from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.sleeves.sleeve_fullness import flare, redraw_hem
from clothwright.paper import Drafting
from clothwright.rules import Kind, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 4"

HEM = RuleTable("hem of the sleeve, gathered")

_NO_SLASH = 2.0
"""A hem that is so nearly full enough is not slashed, cm."""


@HEM.rule(
    "hem opening",
    "what the hem of the sleeve is opened by",
    source=_SRC,
    key="hem_open",
    formula="hem fullness·band − hem width, where that is more than nothing",
    low=0.0,
    high=60.0,
)
def _flare(full_hem: float, band_net: float, hem_sleeve: float) -> float:
    return max(0.0, full_hem * band_net - hem_sleeve)


class GatheredHem(Feature):
    """Sleeve full at its end, longer behind, gathered into a band or cuff."""

    kind: Literal["gathered hem"] = "gathered hem"
    title: ClassVar[str] = "Gathered hem"
    sentence: ClassVar[str] = (
        "The sleeve is [full at its end], {fullness} times its band, and blouses over "
        "it by {blouse}, {drop} more behind."
    )
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve hem"})
    needs: ClassVar[dict[str, str]] = {
        "straight sleeve": 'it is made of a straight one; set elbow = "straight" of '
        'the "set-in sleeve"',
        "sleeve end": 'it is gathered into something; add a "sleeve band" or a "cuff"',
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve hem": "a sleeve has one kind of hem"}

    fullness: Annotated[
        Ratio | None,
        Number(
            "full_hem",
            "hem fullness",
            "hem of the sleeve over its band",
            _SRC,
            1.6,
            None,
            1.2,
            3.0,
            (1.3, 2.0),
            Kind.RATIO,
        ),
    ] = None
    blouse: Annotated[
        Length | None,
        Number(
            "sleeve_blouse",
            "blouse sl",
            "length of the sleeve that blouses over its band",
            _SRC,
            3.0,
            1.25,
            0.0,
            10.0,
            (2.5, 5.0),
        ),
    ] = None
    drop: Annotated[
        Length | None,
        Number(
            "hem_drop",
            "hem drop",
            "drop of the hem behind",
            _SRC,
            2.0,
            0.75,
            0.0,
            4.0,
            (1.5, 2.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (HEM,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEM, "the hem of the sleeve", _draft),)


def _draft(d: Drafting) -> None:
    if d.n.hem_open >= _NO_SLASH:
        flare(d, "hem_drop")
    else:
        redraw_hem(d, "hem_drop")

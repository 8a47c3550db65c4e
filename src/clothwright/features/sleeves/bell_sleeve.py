"""A sleeve flared to its hem (transformations 4)."""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.sleeves.sleeve_fullness import flare
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations 4"


class BellSleeve(Feature):
    """Sleeve flared from its cap to its hem, which hangs free."""

    kind: Literal["bell"] = "bell"
    title: ClassVar[str] = "Bell sleeve"
    sentence: ClassVar[str] = (
        "The sleeve is flared to a [bell], {flare} wider at the hem."
    )
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve hem"})
    needs: ClassVar[dict[str, str]] = {
        "straight sleeve": 'it is flared from a straight one; set elbow = "straight" '
        'of the "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "sleeve hem": "a sleeve has one kind of hem",
        "sleeve end": "a bell hangs free; leave the band or cuff off, or take a "
        '"gathered hem"',
    }

    flare: Annotated[
        Length | None,
        Number(
            "hem_open",
            "hem opening",
            "what the hem of the sleeve is opened by",
            _SRC,
            16.0,
            6.0,
            4.0,
            60.0,
            (10.0, 30.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEM, "the hem of the sleeve", flare),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.hem_open > 1.2 * n.lh:
            yield Finding(
                "SL11",
                Severity.WARN,
                f"The hem opens by {n.hem_open:.1f} cm on a sleeve of {n.lh:.1f} cm: "
                "the cap is bent nearly straight.",
                "hem opening",
                "Flare it less, or make the sleeve longer.",
                {"hem_open": n.hem_open, "lh": n.lh},
            )

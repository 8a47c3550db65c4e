"""The trouser block as the first feature of trousers, with its ease and its legs."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import trousers
from clothwright.blocks.trouser_rules import TROUSERS
from clothwright.blocks.trouser_waist import TROUSER_WAIST
from clothwright.blocks.trousers import BACK, FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import (
    ONE_BLOCK,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
    before_fitting,
)
from clothwright.features.chains import Chains
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.features.trousers.trouser_findings import findings
from clothwright.features.trousers.trouser_seams import trouser_joints, trouser_seams
from clothwright.features.trousers.trouser_sewing import (
    LITTLE,
    by_how_much,
    leg_operations,
    stretched,
)
from clothwright.findings import Finding
from clothwright.paper import Seam, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length

_SRC = "blocks E"


class Trousers(Feature):
    """Trouser block: ease of hip, waist and rise; widths and length of the leg."""

    kind: Literal["trousers"] = "trousers"
    title: ClassVar[str] = "Trousers"
    sentence: ClassVar[str] = (
        "[Trousers] with {hip_ease} of ease at the hip and {rise_ease} in the rise, "
        "{knee} wide at the knee and {hem} at the hem."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("inside_leg", (trousers.FRONT,), ("inseam", "hem"), (0.0, 1.0)),
    )
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            FRONT,
            Place.TROUSERS,
            ("trouser front",),
            {"hem": Role.LEG_HEM},
            centres={"fly": "centre front"},
        ),
        About(
            BACK,
            Place.TROUSERS,
            ("trouser back",),
            {"hem": Role.LEG_HEM},
            centres={"seat": "centre back"},
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S40": "side seam of trousers",
        "S41": "inseam of trousers",
        "S42": "crotch seam of trousers",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "trouser block", "waist", "shaped top"}
    )
    clashes: ClassVar[dict[str, str]] = ONE_BLOCK
    makes_up: ClassVar[dict[str, str]] = {
        "trouser opening": "trousers must open to be put on; add a feature "
        'kind = "fly" or kind = "side zip", or kind = "trouser elastic" to pull on',
        "waist finish": "the waist of the trousers is not finished; add a feature "
        'kind = "waistband", kind = "contour waistband" or kind = "trouser elastic"',
    }

    hip_ease: Annotated[
        Length | None,
        Number("Eh", "Eh", "ease at the hip", _SRC, 4.0, 1.5, 0.0, 16.0, (2.0, 6.0)),
    ] = None
    waist_ease: Annotated[
        Length | None,
        Number("Ew", "Ew", "ease at the waist", _SRC, 2.0, 0.75, 0.0, 8.0, (0.5, 3.0)),
    ] = None
    rise_ease: Annotated[
        Length | None,
        Number("Er", "Er", "ease in the rise", _SRC, 1.0, 0.375, -1.0, 8.0, (0.0, 2.5)),
    ] = None
    knee: Annotated[
        Length | None,
        Number(
            "KW",
            "KW",
            "width of the knee, all round",
            _SRC,
            low=34.0,
            high=90.0,
            usual=(38.0, 70.0),
        ),
    ] = None
    hem: Annotated[
        Length | None,
        Number(
            "HW",
            "HW",
            "width of the hem, all round",
            _SRC,
            low=26.0,
            high=120.0,
            usual=(30.0, 80.0),
        ),
    ] = None
    inside_leg: Annotated[
        Length | None,
        Number(
            "leg",
            "leg",
            "inside leg of the trousers",
            f"{_SRC}1",
            low=30.0,
            high=110.0,
        ),
    ] = None
    seat_tilt: Annotated[
        Length | None,
        Number(
            "tl",
            "tl",
            "tilt of the seat",
            f"{_SRC}7",
            low=0.5,
            high=6.0,
            usual=(1.5, 5.0),
        ),
    ] = None
    seat_rise: Annotated[
        Length | None,
        Number(
            "rq",
            "rq",
            "rise of the centre back waist",
            f"{_SRC}7",
            low=0.0,
            high=5.0,
            usual=(2.0, 3.5),
        ),
    ] = None
    stretched: Annotated[
        Length | None,
        Number(
            "st",
            "st",
            "back inseam stretched onto the front's above the knee",
            f"{_SRC}8",
            0.4,
            0.125,
            0.0,
            1.2,
            (0.3, 0.8),
        ),
    ] = None
    front_in: Annotated[
        Length | None,
        Number(
            "cf_in",
            "cfi",
            "centre front taken in at the waist",
            f"{_SRC}3",
            0.8,
            0.3125,
            0.0,
            2.0,
            (0.5, 1.2),
        ),
    ] = None
    front_drop: Annotated[
        Length | None,
        Number(
            "cf_down",
            "cfd",
            "drop of the waist at the centre front",
            f"{_SRC}3",
            1.0,
            0.375,
            0.0,
            2.5,
            (0.0, 1.2),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TROUSERS, TROUSER_WAIST)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the trouser block", before_fitting(trousers.draft)),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return trouser_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return trouser_joints(sheet)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if stretched(n) >= LITTLE:
            yield (
                f"Stretch the back inseam with the iron by {by_how_much(n, fmt)}"
                "onto the front's, and press the creases in before the crotch is sewn."
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return leg_operations(n, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from findings(n, sheet)

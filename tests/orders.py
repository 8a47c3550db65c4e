"""Orders for tests, made in code."""

from random import Random

from bodies import P92
from clothwright.blocks import bodice
from clothwright.blocks.back_shoulder_dart import BACK_SHOULDER_DART
from clothwright.blocks.back_waist_dart import BACK_WAIST_DART
from clothwright.blocks.bodice_rules import BODICE, CUP_SHARE
from clothwright.blocks.bust_line_rules import MEASURED_DEPTH
from clothwright.body import Body, RuleSet, estimates
from clothwright.features import Feature
from clothwright.features.block import LEVEL_WAIST, Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.shoulder import Tightening
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.loops import Loops
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.peplum import Peplum
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.findings import Severity
from clothwright.order import Draft, Order, OrderError, draft, pattern
from clothwright.paper import Drafting
from clothwright.rules import Given, Hand, Kind, Numbers
from clothwright.units import Unit


def main_features(
    *, pointed: bool = True, ease: float | None = None, given_back: bool = True
) -> tuple[Feature, ...]:
    """The features of the main garment, with the workroom's defaults."""
    return (
        Block(),
        SleevelessArmhole(),
        Neckline(),
        Tightening(),
        FrontArmholePrincess(ease=ease),
        BackArmholePrincess(),
        LowOpenBack(corner_radius=0.0 if pointed else None),
        Loops(),
        UnderPanel(),
        WaistSeam(excess_given_back=given_back),
        Peplum(),
        Facing(),
    )


def closed_back(
    way: BackShoulder = BackShoulder.BY_STYLE,
    *,
    dart: float | None = None,
    lines: str = "armhole",
    front: FrontShape = FrontShape.ROUND,
    back: BackShape = BackShape.ROUND,
    share: float | None = None,
    lining: Mode | None = None,
) -> tuple[Feature, ...]:
    """A closed back with a zip."""
    panels: dict[str, tuple[Feature, ...]] = {
        "armhole": (FrontArmholePrincess(), BackArmholePrincess(share=share)),
        "shoulder": (ShoulderPrincess(),),
        "darts": (SideDart(), BackWaistDart()),
        "mixed": (SideDart(), BackArmholePrincess()),
    }
    inside: tuple[Feature, ...] = (Facing(),)
    if lining is not None:
        own = (Lining(mode=lining),)
        inside = own if lining is Mode.TO_EDGE else (*inside, *own)
    return (
        Block(back_shoulder=way, back_shoulder_dart=dart),
        SleevelessArmhole(),
        Neckline(shape=front),
        BackNeckline(shape=back),
        *panels[lines],
        ConcealedZip(),
        WaistSeam(),
        Peplum(),
        *inside,
    )


def sleeved_features(*swaps: Feature) -> tuple[Feature, ...]:
    """A sleeved top with princess lines, a zip and a neck facing, at the workroom's
    defaults; each swap takes the place of the feature of its kind, or is added."""
    usual = (
        Block(),
        SleevedArmhole(),
        Neckline(shape=FrontShape.ROUND),
        BackNeckline(shape=BackShape.ROUND),
        FrontArmholePrincess(),
        BackArmholePrincess(),
        ConcealedZip(),
        SetInSleeve(),
        WaistSeam(),
        Peplum(),
        NeckFacing(),
    )
    by_kind = {f.kind: f for f in usual} | {f.kind: f for f in swaps}
    if "sleeveless armhole" in by_kind:
        del by_kind["sleeved armhole"]
    if by_kind.keys() & {"cap sleeve", "flutter sleeve"}:
        by_kind.pop("set-in sleeve")
    if "facing" in by_kind:
        del by_kind["neck facing"]
    return tuple(by_kind.values())


def trouser_features(*swaps: Feature) -> tuple[Feature, ...]:
    """Trousers with a fly and a waistband at the workroom's defaults; each swap takes
    the place of the feature of its kind, or is added. A side zip takes that of the
    fly."""
    usual = (Trousers(), Fly(), Waistband())
    by_kind = {f.kind: f for f in usual} | {f.kind: f for f in swaps}
    if "side zip" in by_kind:
        del by_kind["fly"]
    return tuple(by_kind.values())


def random_trousers(rng: Random) -> tuple[Feature, ...]:
    """Trousers with features and amounts taken at random."""
    out: list[Feature] = [
        Trousers(
            hip_ease=rng.choice((None, 2.0, 6.0, 10.0)),
            rise_ease=rng.choice((None, 0.0, 2.5)),
            knee=rng.choice((None, 40.0, 50.0, 70.0)),
            hem=rng.choice((None, 34.0, 40.0, 60.0, 80.0)),
            inside_leg=rng.choice((None, None, 60.0)),
        ),
        rng.choice((Fly(), Fly(), SideZip())),
    ]
    if rng.random() < 0.3:
        second = rng.choice((None, 2.0, 3.0))
        out.append(Pleats(first=rng.choice((None, 2.0, 5.0)), second=second))
    if rng.random() < 0.3:
        out.append(TurnUps(depth=rng.choice((None, 3.0, 6.0))))
    if out[1].kind == "fly" and rng.random() < 0.5:
        return (*out, Pockets(shape=rng.choice(list(Shape))), Waistband())
    tops = (Waistband(), Waistband(height=5.0), ContourBand(), ContourBand(depth=8.0))
    return (*out, rng.choice(tops))


def straight_skirt(*swaps: Feature) -> tuple[Feature, ...]:
    """A straight skirt with zip, vent and waistband at the workroom's defaults; each
    swap takes the place of the feature of its kind, or is added."""
    usual = (StraightSkirt(), SkirtZip(), Vent(), Waistband())
    return tuple(({f.kind: f for f in usual} | {f.kind: f for f in swaps}).values())


def order(
    body: Body,
    features: tuple[Feature, ...],
    *,
    unit: Unit = Unit.CM,
    estimates: RuleSet = RuleSet.HANDBOOK,
    house: str = "",
) -> Order:
    """An order in code."""
    return Order(
        garment="Top",
        number="1",
        unit=unit,
        body=body,
        features=features,
        estimates=estimates,
        house_text=house,
        house_place="house.toml",
    )


CHECKED = {"Eb": 8.0, "Ew": 3.0, "d": 1.0, "sd": 1.2, "se": 0.5}
"""Choices of the check values' block (§5)."""


def drafted(body: Body) -> Drafting:
    """The block alone, as the check values have it."""
    rules = dict(estimates(RuleSet.HANDBOOK).rules)
    for table in (
        BODICE,
        BACK_WAIST_DART,
        BACK_SHOULDER_DART,
        CUP_SHARE,
        MEASURED_DEPTH,
        LEVEL_WAIST,
    ):
        rules.update(table.rules)
    chosen = [Given(k, k, k, Kind.LENGTH, v, Hand.CHOICE) for k, v in CHECKED.items()]
    d = Drafting(Numbers(rules, [*body.given(), *chosen]))
    bodice.draft(d)
    return d


def closed_features(
    front: FrontShape = FrontShape.BOAT,
    back: BackShape = BackShape.BOAT,
    lines: str = "armhole",
) -> tuple[Feature, ...]:
    """A closed back with a zip, faced, wide at the neck."""
    return closed_back(front=front, back=back, lines=lines)


def swapped(
    features: tuple[Feature, ...], new: Feature, *, place_of: str = ""
) -> tuple[Feature, ...]:
    """The features with one put in place of that of its kind, or of another kind; at
    the end when there is none."""
    kind = place_of or new.kind
    if kind not in {f.kind for f in features}:
        return (*features, new)
    return tuple(new if f.kind == kind else f for f in features)


def sound(body: Body, features: tuple[Feature, ...]) -> Draft:
    """An order drafted, and every check of it passed."""
    made = draft(order(body, features))
    assert not made.failed, made.failures()
    return made


def refused(*features: Feature) -> str:
    """What is said of features that a standard body does not get."""
    try:
        draft(order(P92, features))
    except OrderError as e:
        return str(e)
    raise AssertionError("it is drafted")


def cut_faults(made: Draft) -> list[str]:
    """Faults of the finished pattern: allowances, caps, notches and all before them."""
    refused = (
        f for f in pattern(made, words=False).findings if f.severity is Severity.REFUSE
    )
    return [str(f) for f in refused]

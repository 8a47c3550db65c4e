"""Orders for tests, made in code."""

from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.armhole import SleevelessArmhole
from clothwright.features.back_princess import BackArmholePrincess
from clothwright.features.back_shoulder import BackShoulder
from clothwright.features.block import Block
from clothwright.features.concealed_zip import ConcealedZip
from clothwright.features.facing import Facing
from clothwright.features.front_princess import FrontArmholePrincess
from clothwright.features.lining import Lining, Mode
from clothwright.features.loops import Loops
from clothwright.features.neck_shapes import BackShape, FrontShape
from clothwright.features.necklines import BackNeckline, Neckline
from clothwright.features.open_back import LowOpenBack
from clothwright.features.peplum import Peplum
from clothwright.features.shoulder import Tightening
from clothwright.features.shoulder_princess import ShoulderPrincess
from clothwright.features.side_dart import BackWaistDart, SideDart
from clothwright.features.under_panel import UnderPanel
from clothwright.features.waist import WaistSeam
from clothwright.order import Order
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

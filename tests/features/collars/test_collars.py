"""All collars (transformations 5): on surveyed women, made up, with others."""

from dataclasses import replace

import pytest
from shapely.geometry import LineString

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.body.body import MeasureValue
from clothwright.curves import Path
from clothwright.features import Feature
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.collars.bertha import Bertha
from clothwright.features.collars.convertible_collar import ConvertibleCollar
from clothwright.features.collars.flat_collar import FlatCollar
from clothwright.features.collars.neck_frill import NeckFrill
from clothwright.features.collars.sailor_collar import SailorCollar
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.collars.tie_collar import TieCollar
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.findings import Severity
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from orders import closed_back, main_features, order, sleeved_features, swapped

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def made(body: Body, *swaps: Feature) -> Draft:
    return draft(order(body, sleeved_features(*swaps)))


def line(path: Path) -> LineString:
    return LineString(path.flatten(0.002))


# -- all of them ---------------------------------------------------------------------
COLLARS: tuple[Feature, ...] = (
    StandCollar(),
    ShirtCollar(),
    ConvertibleCollar(),
    FlatCollar(),
    SailorCollar(),
    Bertha(),
    NeckFrill(),
    TieCollar(),
)
SHAPES = (FrontShape.ROUND, FrontShape.STANDARD, FrontShape.V, FrontShape.SCOOP)


def shapes_for(collar: Feature) -> list[FrontShape]:
    """Necks that it can be sewn to."""
    pointed = {"sailor collar": True, "bertha": False}.get(collar.kind)
    return [s for s in SHAPES if pointed is None or pointed == (s is FrontShape.V)]


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_on_surveyed_women(collar: Feature) -> None:
    """Every fiftieth woman of the survey of 2012 has her collar, or is refused for her
    body as she is without it."""
    fit = 0
    for body in ansur_women()[::50]:
        for shape in shapes_for(collar):
            features = sleeved_features(Neckline(shape=shape), collar)
            try:
                d = draft(order(body, features, estimates=RuleSet.SURVEY))
            except OrderError as e:
                assert "collar" not in str(e), body.client
                continue
            wrong = [f for f in d.findings if f.severity is Severity.REFUSE]
            assert not [f for f in wrong if f.code[:2] in ("S6", "KS", "KO")]
            assert not [f for f in wrong if "ollar" in str(f) or "Stand" in str(f)]
            fit += not wrong
    assert fit >= 10 * len(shapes_for(collar))


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_a_collar_is_made_before_the_neck_is_faced(collar: Feature) -> None:
    """Interlining before the collar, shoulders before it is set, the facing after it
    (cutting and costing 5)."""
    d = made(P92, collar, Neckline(shape=shapes_for(collar)[0]))
    works = [op.work.name for op in making_order(d).operations]
    told = ["FUSE", "COLLAR", "SET_COLLAR", "EDGE"]
    assert list(dict.fromkeys(w for w in works if w in told)) == told
    assert works.index("SHOULDER") < works.index("SET_COLLAR")
    sewn = [c for op in making_order(d).operations for c in op.seams]
    assert sorted(sewn) == sorted(s.code for s in d.sheet.seams)


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_a_collar_on_a_sleeveless_top_in_all_its_lines(collar: Feature) -> None:
    for lines in ("armhole", "shoulder", "darts"):
        front = shapes_for(collar)[0]
        d = draft(order(THEA, (*closed_back(lines=lines, front=front), collar)))
        assert not pattern(d, words=False).failed, pattern(d, words=False).findings


def test_what_a_collar_does_not_go_with() -> None:
    with pytest.raises(OrderError, match="closed at the neck"):
        draft(order(P92, (*main_features()[:3], *main_features()[4:], FlatCollar())))
    with pytest.raises(OrderError, match="one collar"):
        made(P92, FlatCollar(), StandCollar())
    with pytest.raises(OrderError, match="sweetheart or a keyhole"):
        features = closed_back(front=FrontShape.SWEETHEART)
        draft(order(P92, (*features, FlatCollar())))


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_a_collar_of_two_sides_that_differ(collar: Feature) -> None:
    """Each half by its own side's neck, and all of it sewn once (R28)."""
    features = closed_back(front=shapes_for(collar)[0])
    known = draft(order(P92, features)).numbers
    values, left = dict(P92.values), {}
    for code, by in (("SS", 3.0), ("SH", -0.8)):
        values[code] = MeasureValue(code, known[code], "")
        left[code] = MeasureValue(code, known[code] + by, "")
    body = replace(P92, values=values, left=left)
    d = draft(order(body, (*features, collar)))
    assert not d.failed, d.failures()
    sewn = [c for op in making_order(d).operations for c in op.seams]
    assert sorted(sewn) == sorted(s.code for s in d.sheet.seams)
    assert "S80-L" in sewn


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_no_collar_on_a_wrap(collar: Feature) -> None:
    """Along the crossing edge it would run down to the waist, and a bertha turned back
    on itself there."""
    plain = closed_back(lines="darts")
    features = swapped(plain, WrapFront(), place_of="neckline")
    with pytest.raises(OrderError, match="crossing edges of a wrap"):
        draft(order(P92, (*features, collar)))


@pytest.mark.parametrize("collar", COLLARS, ids=lambda c: c.kind)
def test_a_collar_with_yokes_darts_and_linings(collar: Feature) -> None:
    """The neck is walked wherever it lies: over a dart led to it, on a yoke."""
    front = shapes_for(collar)[0]
    plain = closed_back(lines="darts", front=front)
    darted = tuple(f for f in plain if f.kind != "side dart")
    for features in (
        (*plain, BackYoke()),
        (*darted, BustDart(to=DartPlace.NECK)),
        closed_back(BackShoulder.NECK, front=front),
        *(closed_back(lining=mode, front=front) for mode in Mode),
    ):
        d = draft(order(BRIDA, (*features, collar)))
        assert not pattern(d, words=False).failed, pattern(d, words=False).findings
        assert next(w for w in d.report.walks if w.seam.code == "S80").holds


def test_numbers_have_symbols_of_their_own() -> None:
    for collar in COLLARS:
        d = made(P92, collar, Neckline(shape=shapes_for(collar)[0]))
        reasons = [d.numbers.why(k) for k in d.used]
        symbols = [r.symbol for r in reasons]
        assert len(symbols) == len(set(symbols))

"""Features at their default settings draft on ordinary women: what is left out is
worked out so that it does."""

import pytest

from bodies import P92, THEA, ansur_whole, bdims_women
from clothwright.features import KINDS, Feature
from clothwright.features.bodice.front_tucks import FrontTucks
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.necks.over_head import OVER_HEAD
from clothwright.features.openings.button_stand import Where
from clothwright.features.openings.lacing import Lacing
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft
from clothwright.order.together import disagreements
from clothwright.units import Unit
from orders import order, swapped

WOMEN = (P92, THEA, bdims_women()[100], *ansur_whole()[10::200])

_DARTS = "side dart, back waist dart"
_ABOVE = f"bodice block, {{}}, neckline, back neckline, {_DARTS}"
_SHORT = "bodice block, {}, cowl, back neckline, back waist dart"

ORDERS = {
    "bound cut-out": f"{_ABOVE}, bound cut-out, concealed zip, torso, neck binding, "
    "armhole binding",
    "underarm zip": f"{_ABOVE}, underarm zip, torso, facing",
    "lacing": f"{_ABOVE}, lacing, torso, facing",
    "neck facing beside armholes": f"{_ABOVE}, concealed zip, torso, neck facing, "
    "armhole binding",
    "racer back": _ABOVE.format("racer back") + ", concealed zip, torso, facing",
    "racer back, neck faced": _ABOVE.format("racer back")
    + ", concealed zip, torso, neck facing, armhole binding",
    "cowl": f"{_SHORT}, concealed zip, waist seam, peplum, facing",
    "cowl on a racer": _SHORT.format("racer back")
    + ", concealed zip, waist seam, peplum, facing",
    "two pieces": _ABOVE.format("sleeved armhole")
    + ", concealed zip, set-in sleeve, two pieces, torso, neck facing",
    "cuff": _ABOVE.format("sleeved armhole")
    + ", concealed zip, set-in sleeve, gathered hem, cuff, torso, neck facing",
    "cuff on a drop shoulder": "bodice block, drop shoulder, neckline, back neckline, "
    f"{_DARTS}, concealed zip, set-in sleeve, cuff, torso, neck facing",
    "front tucks below a strapless top": "bodice block, strapless, shoulder princess, "
    "front tucks, concealed zip, torso, facing",
    "capelet": _ABOVE.format("sleeved armhole")
    + ", concealed zip, set-in sleeve, torso, neck facing, capelet",
}


def features(words: str) -> tuple[Feature, ...]:
    """The features of these kinds, at their defaults."""
    kinds = words.format("sleeveless armhole").split(", ")
    return tuple(KINDS[k].model_validate({"kind": k}) for k in kinds)


def drafted(parts: tuple[Feature, ...]) -> list[Draft]:
    """On every woman, in cm and inches in turn; refused by none."""
    made = []
    for i, body in enumerate(WOMEN):
        d = draft(order(body, parts, unit=list(Unit)[i % 2]))
        assert not d.failed, (body.client, d.failures())
        made.append(d)
    return made


@pytest.mark.parametrize("name", ORDERS)
def test_the_defaults_draft_on_ordinary_women(name: str) -> None:
    drafted(features(ORDERS[name]))


@pytest.mark.parametrize(
    ("name", "shape"),
    [
        ("bound cut-out", FrontShape.BOAT),
        ("bound cut-out", FrontShape.V),
        ("underarm zip", FrontShape.BOAT),
        ("underarm zip", FrontShape.SCOOP),
        ("underarm zip", FrontShape.SQUARE),
    ],
)
def test_a_closed_neck_is_deepened_until_the_head_passes(
    name: str, shape: FrontShape
) -> None:
    """The drawn neck is HEAD and 2 cm round, and no deeper than it must be."""
    parts = swapped(features(ORDERS[name]), Neckline(shape=shape))
    for d in drafted(parts)[:4]:
        n, sheet = d.numbers, d.sheet
        asked = n.HEAD + OVER_HEAD
        drawn = (sheet.lines[f"neck {half}"].length for half in ("front", "back"))
        round_ = 2 * sum(drawn)
        assert round_ >= asked
        if n.neck_more > 0:
            assert round_ == pytest.approx(asked + 0.2, abs=0.1)


def test_a_neck_that_opens_is_not_deepened() -> None:
    zipped = ORDERS["underarm zip"].replace("underarm zip", "concealed zip")
    slit = ORDERS["underarm zip"].replace(
        "underarm zip", "back neck slit, underarm zip"
    )
    for words in (zipped, slit):
        for d in drafted(features(words)):
            assert d.numbers.neck_more == 0.0
            usual = 3.125 * 2.54 if d.order.unit is Unit.IN else 8.0
            assert d.numbers.Df == pytest.approx(usual)


def test_a_placket_opens_a_neck_in_whatever_order_it_is_named() -> None:
    zip_ = _ABOVE + ", {}, {}, torso, facing"
    for pair in (("neck placket", "underarm zip"), ("underarm zip", "neck placket")):
        words = zip_.format("sleeveless armhole", *pair)
        assert draft(order(P92, features(words))).numbers.neck_more == 0.0


@pytest.mark.parametrize(
    ("kind", "field"), [("knit bodice", "narrowed"), ("cuff", "underlap")]
)
def test_a_default_that_is_written_out_is_usual(kind: str, field: str) -> None:
    """In inches some lie a hair beyond the usual, which is told in cm."""
    others = "knit bodice, neck band, knit sleeve" if "knit" in kind else ORDERS["cuff"]
    number = KINDS[kind].numbers()[field]
    assert number.usual is not None
    for unit in Unit:
        default = number.default(unit)
        assert default is not None
        one = KINDS[kind].model_validate({"kind": kind, field: default})
        d = draft(order(P92, swapped(features(others), one), unit=unit))
        assert number.symbol not in [f.place for f in d.findings if f.code == "usual"]
    low, high = number.usual
    assert not low <= (number.default(Unit.IN) or 0.0) <= high


def test_a_depth_that_the_order_says_stays() -> None:
    parts = swapped(features(ORDERS["underarm zip"]), Neckline(depth=8.0))
    d = draft(order(P92, parts))
    assert d.numbers.Df == 8.0
    refused = [f.code for f in d.findings if f.severity is Severity.REFUSE]
    assert refused == ["R-j"]


def test_a_laced_torso_is_a_top_where_its_length_is_left_out() -> None:
    for d in drafted(features(ORDERS["lacing"])):
        assert (
            pytest.approx(12 * 2.54 if d.order.unit is Unit.IN else 30.0) == d.numbers.L
        )
    zipped = ORDERS["lacing"].replace("lacing", "concealed zip")
    assert draft(order(P92, features(zipped))).numbers.L == 60.0


def test_tucks_begin_beside_the_edge_of_a_lacing() -> None:
    """As far from the edge, set back by half the gap, as else from the fold."""
    tucked = ORDERS["lacing"].replace("lacing", "lacing, front tucks")
    parts = swapped(features(tucked), Lacing(where=Where.FRONT))
    for d in drafted(parts):
        n = d.numbers
        assert n.tuck_first == pytest.approx(n.first_usual + n.lace_gap / 2)
    behind = draft(order(P92, features(tucked))).numbers
    assert behind.tuck_first == behind.first_usual


def test_the_waist_counts_the_gap_beside_tucks() -> None:
    peplum = ORDERS["lacing"].replace("torso", "waist seam, peplum")
    parts = features(peplum.replace("lacing", "lacing, front tucks"))
    parts = swapped(parts, Lacing(where=Where.FRONT))
    drafted(swapped(parts, FrontTucks(count=2)))


def test_a_sleeve_left_out_is_short_but_for_what_is_worn_at_the_wrist() -> None:
    plain = features(ORDERS["two pieces"].replace("two pieces, ", ""))
    short = draft(order(P92, plain)).numbers
    assert short.lh < short.SE
    bent = draft(order(P92, swapped(plain, SetInSleeve(elbow=Elbow.DART)))).numbers
    long = draft(order(P92, features(ORDERS["two pieces"]))).numbers
    assert long.lh == bent.lh == pytest.approx(long.AL)
    cuffed = draft(order(P92, features(ORDERS["cuff"]))).numbers
    assert cuffed.lh == pytest.approx(long.AL + cuffed.blouse - cuffed.end_depth)


def test_a_reach_that_the_order_says_stays() -> None:
    asked = swapped(features(ORDERS["two pieces"]), SetInSleeve(reach=Reach.SHORT))
    with pytest.raises(OrderError, match="goes on well below the elbow"):
        draft(order(P92, asked))


def test_an_underlining_of_no_bodice_is_told_what_to_set() -> None:
    skirt = "straight skirt, skirt zip, waistband"
    (told,) = disagreements(features(f"{skirt}, underlining"))
    assert 'set the underlining\'s parts to "the skirt"' in told.why

"""Alterations of skirts, trousers and sleeves after a fitting.

Each moves what it says by what it says: exact figures. What the hands do with the paper
and what the numbers say are two ways to the same block, held against each other; and
all is trued and proven on women of a survey.
"""

import math
from dataclasses import dataclass

import pytest
from shapely.geometry import Polygon

from bodies import P92, ansur_legs, ansur_women
from clothwright.body import Body
from clothwright.curves import Point, distance
from clothwright.features import Feature, fitting
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import BY_WORD
from clothwright.features.fittings.ground import (
    BODICE,
    SKIRT,
    SLEEVE,
    TROUSERS,
    Ground,
)
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.order import Draft, OrderError, Workroom, draft
from clothwright.paper import Drafting, Sheet
from orders import order, sleeved_features, straight_skirt, trouser_features

MM = 0.1

GARMENTS: dict[str, tuple[Feature, ...]] = {
    SKIRT.word: straight_skirt(),
    TROUSERS.word: trouser_features(),
    SLEEVE.word: sleeved_features(SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART)),
}
WOMEN: dict[str, tuple[Body, ...]] = {
    SKIRT.word: ansur_women()[11::45],
    TROUSERS.word: ansur_legs()[11::45],
    SLEEVE.word: ansur_women()[11::45],
}
"""22 women or 23 each."""

WORDS = [w for w, a in BY_WORD.items() if a.ground is not BODICE]


def garment(word: str) -> tuple[Feature, ...]:
    return GARMENTS[BY_WORD[word].ground.word]


def fitted(
    features: tuple[Feature, ...], amounts: dict[str, float], body: Body = P92
) -> Draft:
    """An order with alterations, by their words, drafted."""
    rows = [{"do": k, "by": v} for k, v in amounts.items()]
    made = Fitting.model_validate({"alteration": rows})
    return draft(order(body, (*features, made)))


def by_word(word: str, by: float, body: Body = P92) -> Draft:
    return fitted(garment(word), {word: by}, body)


@pytest.mark.parametrize("word", WORDS)
def test_every_seam_meets_on_real_women(word: str) -> None:
    """No seam, corner or hem fails; where it cannot be had a sentence says so."""
    kind, features = BY_WORD[word], garment(word)
    low, high = kind.usual
    passed = 0
    told: list[str] = []
    for i, body in enumerate(WOMEN[kind.ground.word]):
        by = (low, (low + high) / 2, high)[i % 3]
        try:
            d = by_word(word, by, body)
        except OrderError as e:
            told += e.sentences
            continue
        for p in d.sheet.pieces.values():
            assert Polygon(p.outline.flatten(0.02)).is_valid, p.code
        told += d.failures()[:1]
        passed += not d.failed
    assert passed >= 20, told
    assert all("Error" not in s for s in told)
    assert draft(order(P92, features)).sheet != by_word(word, low).sheet


@dataclass
class Stages:
    """The block before the fitting, after the hands' work, and trued."""

    before: Sheet
    by_hand: Sheet
    trued: Sheet


def block_of(monkeypatch: pytest.MonkeyPatch, word: str, by: float) -> Stages:
    """The block at its three stages."""
    kept: list[Stages] = []
    true = fitting._true

    def spy(d: Drafting, block: Sheet, ground: Ground) -> None:
        by_hand = d.sheet.unwatched()
        true(d, block, ground)
        kept.append(Stages(block.unwatched(), by_hand, d.sheet.unwatched()))

    monkeypatch.setattr(fitting, "_true", spy)
    by_word(word, by)
    return kept[0]


SKIRT_MARKS = ("Cb", "Wbs", "Hbs", "Mbs", "Cf", "Wfs", "Hfs", "Mfs")
RISE_MARKS = ("Cf", "Wfs", "Hfc", "Hfs", "Ff", "Cb", "Hbs", "Fb", "Kfi", "Mbs")
ARM_MARKS = ("T", "K", "Uf", "Ub", "Ef", "Eb", "Hc")
LEG_MARKS = ("Cf", "Wfs", "Hfs", "Ff", "Kfi", "Kfs", "Mfi", "Cb", "Hbs", "Kbi", "Mbs")
EXACT = {
    **dict.fromkeys((w for w in WORDS if BY_WORD[w].ground is SKIRT), SKIRT_MARKS),
    **dict.fromkeys(("long rise", "short rise"), RISE_MARKS),
    **dict.fromkeys(("full seat of trousers", "flat seat of trousers"), ("Cb", "Cf")),
    **dict.fromkeys(
        (
            *("longer front fork", "shorter front fork", "full thighs", "thin thighs"),
            *("longer back fork", "shorter back fork", "full calves", "thin calves"),
            *("long legs", "short legs"),
        ),
        LEG_MARKS,
    ),
    **dict.fromkeys((w for w in WORDS if BY_WORD[w].ground is SLEEVE), ARM_MARKS),
}
"""Marks that the hands' work brings to their very place; of a sleeve, whose cap the
hands draw until it is as long as before, within 4 mm."""


@pytest.mark.parametrize("word", EXACT)
def test_hands_and_numbers_come_to_the_same_block(
    monkeypatch: pytest.MonkeyPatch, word: str
) -> None:
    low, high = BY_WORD[word].usual
    for by in (low, (low + high) / 2):
        b = block_of(monkeypatch, word, by)
        for mark in EXACT[word]:
            off = distance(b.by_hand.points[mark], b.trued.points[mark])
            slack = 4 * MM if BY_WORD[word].ground is SLEEVE else 0.2 * MM
            assert off < slack, (word, by, mark, off)


def cm(d: Draft, *edges: str) -> float:
    """Lengths of edges together: "SB.side"."""
    return sum(d.sheet.length(*e.split(".")) for e in edges)


def waist(d: Draft, code: str) -> float:
    return sum(
        e.length for e in d.sheet.piece(code).edges if e.name.startswith("waist")
    )


# -- skirt -----------------------------------------------------------------------------
PLAIN_SKIRT = draft(order(P92, straight_skirt()))


def hip(d: Draft, code: str) -> float:
    (line,) = (x for x in d.sheet.piece(code).lines if x.name == "hip line")
    return line.path.length


@pytest.mark.parametrize(("word", "sign"), [("full hips", 1), ("narrow hips", -1)])
def test_hips_move_at_both_sides_and_the_waist_stays(word: str, sign: int) -> None:
    for by in (0.6, 1.3, 2.0):
        d = by_word(word, by)
        for code in ("SB", "SF"):
            assert hip(d, code) - hip(PLAIN_SKIRT, code) == pytest.approx(sign * by)
            hem = cm(d, f"{code}.hem") - cm(PLAIN_SKIRT, f"{code}.hem")
            assert hem == pytest.approx(sign * by, abs=0.1 * MM)
            assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


def test_hips_in_two_places_are_let_out_by_the_whole() -> None:
    """Half at the side and half in a slash, which the darts take at the waist."""
    by = 4.0
    d, n = by_word("full hips", by), PLAIN_SKIRT.numbers
    assert not d.failed, d.failures()
    assert d.numbers["xs_S"] - n["xs_S"] == pytest.approx(by)
    assert d.numbers["a_S"] - n["a_S"] == pytest.approx(by / 2)
    assert d.numbers["bd_S"] - n["bd_S"] == pytest.approx(by / 2, abs=0.3)
    for code in ("SB", "SF"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)
    with pytest.raises(ValueError, match="in one place and 5 cm in two"):
        BY_WORD["full hips"](by=5.2)


@pytest.mark.parametrize(
    ("word", "sign"), [("full high hips", 1), ("flat high hips", -1)]
)
def test_above_the_hip_the_darts_take_what_the_side_gives(word: str, sign: int) -> None:
    by = 0.8
    d, n = by_word(word, by), PLAIN_SKIRT.numbers
    assert n["a_S"] - d.numbers["a_S"] == pytest.approx(sign * by, abs=1e-6)
    for dart in ("bd_S", "fd_S"):
        assert d.numbers[dart] - n[dart] == pytest.approx(sign * by, abs=0.1)
    for code in ("SB", "SF"):
        assert hip(d, code) == pytest.approx(hip(PLAIN_SKIRT, code))
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


@pytest.mark.parametrize(("word", "sign"), [("full waist", 1), ("small waist", -1)])
def test_the_waist_moves_by_four_times_the_amount(word: str, sign: int) -> None:
    by = 0.6
    d = by_word(word, by)
    for code in ("SB", "SF"):
        grown = waist(d, code) - waist(PLAIN_SKIRT, code)
        assert grown == pytest.approx(sign * by, abs=MM / 2)
        assert hip(d, code) == pytest.approx(hip(PLAIN_SKIRT, code))
    assert d.numbers["Ew"] - PLAIN_SKIRT.numbers["Ew"] == pytest.approx(4 * sign * by)


@pytest.mark.parametrize(("word", "sign"), [("high hips", 1), ("low hips", -1)])
def test_the_side_waist_goes_up_and_the_centres_stay(word: str, sign: int) -> None:
    by = 0.7
    d = by_word(word, by)
    for b in ("b", "f"):
        up = PLAIN_SKIRT.sheet.points[f"W{b}s"].y - d.sheet.points[f"W{b}s"].y
        assert up == pytest.approx(sign * by)
        assert d.sheet.points[f"C{b}"] == PLAIN_SKIRT.sheet.points[f"C{b}"]
    for code in ("SB", "SF"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


SWUNG = {
    "full seat of skirt": ("SB", "Cb", "bd_S", 1),
    "flat seat of skirt": ("SB", "Cb", "bd_S", -1),
    "full abdomen": ("SF", "Cf", "fd_S", 1),
    "flat abdomen": ("SF", "Cf", "fd_S", -1),
}


@pytest.mark.parametrize("word", SWUNG)
def test_a_seat_opens_the_centre_and_widens_the_side(word: str) -> None:
    """By the amount at the centre, by half of it at the side; the other half stays."""
    code, mark, dart, sign = SWUNG[word]
    other = "SF" if code == "SB" else "SB"
    for by in (0.6, 1.2, 4.0):  # the last in two places
        d = by_word(word, by)
        if by < 2.0 or sign > 0:
            assert not d.failed, d.failures()
        up = PLAIN_SKIRT.sheet.points[mark].y - d.sheet.points[mark].y
        assert up == pytest.approx(sign * by)
        wider = hip(d, code) - hip(PLAIN_SKIRT, code)
        assert wider == pytest.approx(sign * by / 2)
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)
        if by < 2.0:
            more = d.numbers[dart] - PLAIN_SKIRT.numbers[dart]
            assert more == pytest.approx(sign * by / 2, abs=0.2)  # and the curve
        for e in d.sheet.piece(other).edges:
            was = PLAIN_SKIRT.sheet.length(other, e.name)
            if by < 2.0:  # beyond, a dart may go, and its sides take the rest
                assert e.length == pytest.approx(was, abs=0.1 * MM), e.name


def test_a_hollow_back_lowers_the_centre_alone() -> None:
    for by in (0.6, 1.5):
        d = by_word("hollow back of skirt", by)
        low = d.sheet.points["Cb"].y - PLAIN_SKIRT.sheet.points["Cb"].y
        assert low == pytest.approx(by)
        assert d.sheet.points["Wbs"] == PLAIN_SKIRT.sheet.points["Wbs"]
        assert waist(d, "SB") == pytest.approx(waist(PLAIN_SKIRT, "SB"), abs=MM / 2)


# -- trousers --------------------------------------------------------------------------
PLAIN_TROUSERS = draft(order(P92, trouser_features()))


def moved(d: Draft, mark: str, about: str) -> tuple[float, float]:
    """How far a mark has gone, seen from another: towards the fork or the centre, and
    down."""
    out = []
    for of in (d, PLAIN_TROUSERS):
        a, o = of.sheet.points[mark], of.sheet.points[about]
        out.append(((a.x - o.x) * (1 if about == "Of" else -1), a.y - o.y))
    return out[0][0] - out[1][0], out[0][1] - out[1][1]


@pytest.mark.parametrize(("word", "sign"), [("long rise", 1), ("short rise", -1)])
def test_the_rise_moves_the_waist_and_the_hip_by_a_third(word: str, sign: int) -> None:
    by = 1.2
    d = by_word(word, by)
    for mark, about, share in (
        ("Cf", "Of", 1.0),
        ("Cb", "Ob", 1.0),
        ("Hfs", "Of", 1 / 3),
        ("Hbs", "Ob", 1 / 3),
        ("Ff", "Of", 0.0),
    ):
        x, y = moved(d, mark, about)
        assert y == pytest.approx(-sign * by * share, abs=0.1 * MM), mark
        if mark[0] in "CF" and mark != "Cb":
            assert x == pytest.approx(0.0, abs=0.1 * MM)
    for code in ("TF", "TB"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_TROUSERS, code), abs=MM / 2)


FORKS = {
    "longer front fork": (1.0, 0.0),
    "shorter front fork": (-1.0, 0.0),
    "longer back fork": (0.0, 1.0),
    "shorter back fork": (0.0, -1.0),
    "full thighs": (0.3, 0.7),
    "thin thighs": (-0.3, -0.7),
}


@pytest.mark.parametrize("word", FORKS)
def test_a_fork_goes_out_alone(word: str) -> None:
    """Centre front, side, knee and crease stay; the inseams fit again (truing: the
    back is stretched by st)."""
    by = 1.0
    d = by_word(word, by)
    for mark, about, share in (
        ("Ff", "Of", FORKS[word][0]),
        ("Fb", "Ob", FORKS[word][1]),
    ):
        assert moved(d, mark, about)[0] == pytest.approx(share * by, abs=0.1 * MM)
    for mark in ("Cf", "Hfs", "Kfi", "Mfs"):
        assert moved(d, mark, "Of") == pytest.approx((0.0, 0.0), abs=0.1 * MM)
    for mark in ("Cb", "Hbs", "Kbi", "Mbs"):
        assert moved(d, mark, "Ob") == pytest.approx((0.0, 0.0), abs=0.1 * MM)
    apart = cm(d, "TF.inseam") - cm(d, "TB.inseam")
    assert apart == pytest.approx(d.numbers["st"], abs=0.2 * MM)


@pytest.mark.parametrize(
    ("word", "sign"), [("full seat of trousers", 1), ("flat seat of trousers", -1)]
)
def test_a_seat_of_trousers_turns_about_the_side_at_the_hip(
    word: str, sign: int
) -> None:
    """A chord of `by` at the hip's width; the waist point turns by the same angle."""
    by = 1.2
    d, was = by_word(word, by), PLAIN_TROUSERS.sheet.points
    angle = sign * 2 * math.asin(by / (2 * PLAIN_TROUSERS.numbers["hip_B"]))
    side, q = was["Hbs"], was["Cb"]  # the centre back lies at the left of the side
    x, y = q.x - side.x, q.y - side.y
    to = (
        side.x + x * math.cos(angle) - y * math.sin(angle),
        side.y + x * math.sin(angle) + y * math.cos(angle),
    )
    assert distance(d.sheet.points["Cb"], Point(*to)) < 0.2 * MM
    assert waist(d, "TB") == pytest.approx(waist(PLAIN_TROUSERS, "TB"), abs=MM / 2)
    assert cm(d, "TB.side") == pytest.approx(cm(PLAIN_TROUSERS, "TB.side"), abs=MM)


def test_a_gaping_waist_goes_into_the_back_darts() -> None:
    by = 0.8
    d = by_word("close back waist", by)
    less = waist(PLAIN_TROUSERS, "TB") - waist(d, "TB")
    assert less == pytest.approx(by, abs=MM / 2)
    assert waist(d, "TF") == pytest.approx(waist(PLAIN_TROUSERS, "TF"), abs=0.1 * MM)
    more = d.numbers["bd_T"] - PLAIN_TROUSERS.numbers["bd_T"]
    assert more == pytest.approx(by)


@pytest.mark.parametrize(("word", "sign"), [("full calves", 1), ("thin calves", -1)])
def test_calves_move_at_every_seam(word: str, sign: int) -> None:
    by = 0.5
    d = by_word(word, by)
    for b, about in (("f", "Of"), ("b", "Ob")):
        for level in "KM":
            assert moved(d, f"{level}{b}i", about)[0] == pytest.approx(sign * by)
            assert moved(d, f"{level}{b}s", about)[0] == pytest.approx(-sign * by)
        assert moved(d, f"H{b}s", about) == pytest.approx((0.0, 0.0), abs=0.1 * MM)


@pytest.mark.parametrize(("word", "sign"), [("long legs", 1), ("short legs", -1)])
def test_legs_grow_below_the_knee_or_on_both_sides_of_it(word: str, sign: int) -> None:
    for by, at_knee in ((1.2, 0.0), (4.0, 2.0)):
        d = by_word(word, by)
        assert not d.failed, d.failures()
        for b, about in (("f", "Of"), ("b", "Ob")):
            assert moved(d, f"M{b}i", about) == pytest.approx((0.0, sign * by))
            knee = moved(d, f"K{b}i", about)
            assert knee == pytest.approx((0.0, sign * at_knee), abs=1e-6)


# -- sleeve ----------------------------------------------------------------------------
BENT = GARMENTS[SLEEVE.word]
PLAIN_SLEEVE = draft(order(P92, BENT))


def halves(d: Draft) -> tuple[float, float]:
    """The cap from the underarms to the shoulder notch, front and back."""
    return cm(d, "SL.cap front"), cm(d, "SL.cap back")


@pytest.mark.parametrize(("word", "sign"), [("raise cap", 1), ("lower cap", -1)])
def test_a_cap_is_higher_by_the_amount_and_fits_its_armhole(
    word: str, sign: int
) -> None:
    for by in (0.6, 1.5):
        d, n = by_word(word, by), PLAIN_SLEEVE.numbers
        assert d.numbers["h_cap"] - n["h_cap"] == pytest.approx(sign * by, abs=1e-4)
        assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
        assert (d.numbers["Wb"] - n["Wb"]) * sign < 0
        assert d.numbers["lh"] == n["lh"]


@pytest.mark.parametrize(("word", "sign"), [("full arms", 1), ("thin arms", -1)])
def test_an_arm_is_wider_by_the_amount_all_round(word: str, sign: int) -> None:
    by = 1.6
    d, n = by_word(word, by), PLAIN_SLEEVE.numbers
    assert d.numbers["Wb"] - n["Wb"] == pytest.approx(sign * by)
    across = d.sheet.points["Uf"].x - d.sheet.points["Ub"].x
    assert across == pytest.approx(d.numbers["Wb"])
    assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
    assert (d.numbers["h_cap"] - n["h_cap"]) * sign < 0


@pytest.mark.parametrize(
    ("word", "sign"), [("turn sleeve forward", 1), ("turn sleeve back", -1)]
)
def test_the_top_is_turned_and_each_half_fits_its_armhole(word: str, sign: int) -> None:
    for by in (0.6, 1.5):
        d = by_word(word, by)
        assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
        cap = d.sheet.edge("SL", "cap back").path + d.sheet.edge("SL", "cap front").path
        was = PLAIN_SLEEVE.sheet.edge("SL", "cap back").path
        was += PLAIN_SLEEVE.sheet.edge("SL", "cap front").path
        on = cap.length_to_point(d.sheet.points["T"])
        before = was.length_to_point(PLAIN_SLEEVE.sheet.points["T"])
        assert on - before == pytest.approx(sign * by, abs=0.5 * MM)


@pytest.mark.parametrize(("word", "sign"), [("long arms", 1), ("short arms", -1)])
def test_a_bent_sleeve_grows_half_above_and_half_below_the_elbow(
    word: str, sign: int
) -> None:
    by = 2.0
    d, n = by_word(word, by), PLAIN_SLEEVE.numbers
    assert d.numbers["lh"] - n["lh"] == pytest.approx(sign * by)
    assert d.numbers["y_E"] - n["y_E"] == pytest.approx(sign * by / 2)
    below = d.numbers["below_elbow"] - n["below_elbow"]
    assert below == pytest.approx(sign * by / 2)
    assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE))


def test_the_elbow_is_let_out_and_moved() -> None:
    n = PLAIN_SLEEVE.numbers
    d = by_word("full elbow", 1.2)
    across = d.sheet.points["Ef"].x - d.sheet.points["Eb"].x
    assert across - n["We"] == pytest.approx(1.2)
    for word, sign in (("lower elbow", 1), ("raise elbow", -1)):
        d = by_word(word, 1.2)
        down = d.sheet.points["Eb"].y - PLAIN_SLEEVE.sheet.points["Eb"].y
        assert down == pytest.approx(sign * 1.2)
        assert d.numbers["lh"] == n["lh"]
    straight = sleeved_features()
    with pytest.raises(OrderError, match="bent at the elbow"):
        fitted(straight, {"full elbow": 1.0})


# -- together --------------------------------------------------------------------------
TOGETHER: tuple[tuple[tuple[Feature, ...], dict[str, float]], ...] = (
    (
        straight_skirt(),
        {"full seat of skirt": 1.0, "full hips": 0.8, "high hips": 0.6},
    ),
    (
        trouser_features(),
        {"long rise": 0.8, "full seat of trousers": 0.8, "longer front fork": 0.6},
    ),
    (
        BENT,
        {"full bust": 0.8, "turn sleeve forward": 0.6, "full arms": 1.0},
    ),
)


@pytest.mark.parametrize(("features", "amounts"), TOGETHER)
def test_alterations_go_together(
    features: tuple[Feature, ...], amounts: dict[str, float]
) -> None:
    """In either order; a sleeve is set into the armhole as it is altered."""
    for told in (amounts, dict(reversed(amounts.items()))):
        d = fitted(features, told)
        assert not d.failed, d.failures()
        steps = [s for s in d.steps if s.feature == "fitting"]
        keys = {a.key for s in steps for a in s.amounts}
        assert keys >= {"fit1", "fit2", "fit3"}


def test_what_the_order_does_not_have_is_told() -> None:
    with pytest.raises(OrderError, match="it alters a straight skirt; add one"):
        fitted(trouser_features(), {"full hips": 1.0})
    with pytest.raises(OrderError, match="it alters trousers; add them"):
        fitted(straight_skirt(), {"long rise": 1.0})


def test_a_house_rule_and_a_choice_stay_with_the_number_before_the_fitting() -> None:
    amounts = {"full seat of skirt": 1.2, "hollow back of skirt": 0.6}
    n = fitted(straight_skirt(StraightSkirt(back_drop=0.5)), amounts).numbers
    lives = [n[k] for k in ("db_S@0", "db_S@1", "db_S")]
    assert lives == pytest.approx([0.5, -0.7, -0.1])
    made = Fitting.model_validate({"alteration": [{"do": "full hips", "by": 1.0}]})
    house = 'unit = "cm"\n[rules]\nxs_S = "half_S/2 - 0.3"\n'
    d = draft(order(P92, (*straight_skirt(), made), house=house))
    assert not d.failed, d.failures()
    n = d.numbers
    assert n["xs_S@0"] == pytest.approx(n["half_S@0"] / 2 - 0.3)
    assert n["xs_S"] == pytest.approx(n["xs_S@0"] + 1.0)


def test_an_altered_bodice_alone_is_its_sleeve_s_armhole() -> None:
    """And what is basted, changed and left off again is drawn as if from the start."""
    room, features = Workroom(), sleeved_features()
    for amounts in (
        {},
        {"full bust": 1.2},
        {"full bust": 1.2, "full arms": 1.2},
        {"turn sleeve back": 1.0},
        {"round back": 0.6},
    ):
        rows = [{"do": k, "by": v} for k, v in amounts.items()]
        made = Fitting.model_validate({"alteration": rows})
        kept = room.draft(order(P92, (*features, made)))
        assert not kept.failed, kept.failures()
        assert kept.sheet == draft(order(P92, (*features, made))).sheet

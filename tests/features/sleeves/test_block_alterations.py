"""Alterations of skirts, trousers and sleeves after a fitting.

Each moves what it says by what it says: exact figures. What the hands do with the paper
and what the numbers say are two ways to the same block, held against each other; and
all is trued and proven on women of a survey.
"""

from dataclasses import dataclass

import pytest
from shapely.geometry import Polygon

from bodies import P92, ansur_legs, ansur_women
from clothwright.body import Body
from clothwright.curves import distance
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
        GARMENTS[SLEEVE.word],
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

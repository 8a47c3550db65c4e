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
from clothwright.features.fittings.ground import BODICE, SKIRT, TROUSERS, Ground
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Drafting, Sheet
from orders import order, straight_skirt, trouser_features

MM = 0.1

GARMENTS: dict[str, tuple[Feature, ...]] = {
    SKIRT.word: straight_skirt(),
    TROUSERS.word: trouser_features(),
}
WOMEN: dict[str, tuple[Body, ...]] = {
    SKIRT.word: ansur_women()[11::45],
    TROUSERS.word: ansur_legs()[11::45],
}
"""22 women each."""

WORDS = [w for w, a in BY_WORD.items() if a.ground is not BODICE]


def garment(word: str) -> tuple[Feature, ...]:
    return GARMENTS[BY_WORD[word].ground.word]


def fitted(features: tuple[Feature, ...], body: Body = P92, **amounts: float) -> Draft:
    """An order with alterations, drafted; words are written with underscores."""
    rows = [{"do": k.replace("_", " "), "by": v} for k, v in amounts.items()]
    made = Fitting.model_validate({"alteration": rows})
    return draft(order(body, (*features, made)))


def by_word(word: str, by: float, body: Body = P92) -> Draft:
    return fitted(garment(word), body, **{word.replace(" ", "_"): by})


@pytest.mark.parametrize("word", WORDS)
def test_every_seam_meets_on_real_women(word: str) -> None:
    """No seam, corner or hem fails; where it cannot be had a sentence says so."""
    kind, features = BY_WORD[word], garment(word)
    low, high = kind.usual
    passed, told = 0, []
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
}
"""Marks that the hands' work brings to their very place."""


@pytest.mark.parametrize("word", EXACT)
def test_hands_and_numbers_come_to_the_same_block(
    monkeypatch: pytest.MonkeyPatch, word: str
) -> None:
    low, high = BY_WORD[word].usual
    for by in (low, (low + high) / 2):
        b = block_of(monkeypatch, word, by)
        for mark in EXACT[word]:
            off = distance(b.by_hand.points[mark], b.trued.points[mark])
            assert off < 0.2 * MM, (word, by, mark, off)

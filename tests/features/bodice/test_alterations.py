"""Alterations after a fitting, on many real bodies.

What the hands do with the paper (slash, overlap, move) and what the numbers say are two
ways to the same block; they are held against each other. Shapely judges the outlines.
"""

import math
from dataclasses import dataclass

import pytest
from shapely.geometry import Polygon

from bodies import P92, ansur_women, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Point, degrees_between, distance
from clothwright.features import Feature, fitting
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import ALTERATIONS, BY_WORD, Alteration
from clothwright.features.fittings.ground import BODICE, Ground
from clothwright.order import Draft, OrderError, Workroom, draft
from clothwright.paper import Drafting, Sheet
from orders import closed_back, main_features, order, sleeved_features, swapped
from women import woman

MM = 0.1

SIDE_DARTS = swapped(sleeved_features(), SideDart(), place_of="front armhole princess")
STYLES = {
    "open back": main_features(),
    "zip": closed_back(),
    "sleeves and side darts": SIDE_DARTS,
    "shoulder line": closed_back(lines="shoulder"),
}
BODIES = [(b, RuleSet.HANDBOOK) for b in bdims_women()[7::65]]
BODIES += [(b, RuleSet.SURVEY) for b in ansur_women()[31::250]]

OF_BODICE = [w for w, a in BY_WORD.items() if a.ground is BODICE]

HEMMED_IN = {"broad back", "round back", "small bust", "lower bust point"}
"""A shoulder that hangs little over the pitch cannot be let out, one that eases its
most cannot grow, a bust without ease cannot be taken in, and the sides take it in at a
low bust point: these are refused so."""


def altered(*alterations: Alteration) -> Fitting:
    """The feature with these alterations."""
    rows = [{"do": a.do, "by": a.by} for a in alterations]
    return Fitting.model_validate({"alteration": rows})


def fitted(
    body: Body,
    features: tuple[Feature, ...],
    *alterations: Alteration,
    rules: RuleSet = RuleSet.HANDBOOK,
    house: str = "",
) -> Draft:
    """An order with alterations, drafted."""
    with_fitting = (*features, altered(*alterations))
    return draft(order(body, with_fitting, estimates=rules, house=house))


@dataclass
class Stages:
    """The block before the fitting, after the hands' work, and trued."""

    before: Sheet
    by_hand: Sheet
    trued: Sheet


def block_of(
    monkeypatch: pytest.MonkeyPatch, body: Body, *alterations: Alteration
) -> Stages:
    """The block at its three stages."""
    kept: list[Stages] = []
    true = fitting._true

    def spy(d: Drafting, block: Sheet, ground: Ground) -> None:
        by_hand = d.sheet.unwatched()
        true(d, block, ground)
        kept.append(Stages(block.unwatched(), by_hand, d.sheet.unwatched()))

    monkeypatch.setattr(fitting, "_true", spy)
    fitted(body, closed_back(), *alterations)
    return kept[0]


@pytest.mark.parametrize("word", OF_BODICE)
def test_every_alteration_on_real_bodies(word: str) -> None:
    kind = BY_WORD[word]
    passed = 0
    refused: list[str] = []
    faults: list[str] = []
    low, high = kind.usual
    styles = [f for k, f in STYLES.items() if k not in kind.clashes]
    for i, (body, rules) in enumerate(BODIES):
        for j, by in enumerate((low, (low + high) / 2, high)):
            features = styles[(i + j) % len(styles)]
            if draft(order(body, features, estimates=rules)).failed:
                continue
            try:
                d = fitted(body, features, kind(do=word, by=by), rules=rules)
            except OrderError as e:
                refused += e.sentences
                continue
            for p in d.sheet.pieces.values():
                assert Polygon(p.outline.flatten(0.02)).is_valid, p.code
            faults += d.failures()[:1]
            passed += not d.failed
    for sentence in (*refused, *faults):
        assert "Error" not in sentence
        assert len(sentence) > 30, sentence
    if word not in HEMMED_IN:
        told = (*refused, *faults)
        assert passed >= 0.97 * (passed + len(told)), told


EXACT = {
    "close front neck": ("hf", "tf", "G", "U1", "BP", "C block", "CFw", "wf", "D1"),
    "close front armhole": ("hf", "tf", "G", "U1", "BP", "wf"),
    "full bust": ("hf", "tf", "G", "BP", "C block", "CFw", "wf", "Gc"),
    "small bust": ("hf", "tf", "G", "BP", "C block", "CFw", "wf", "Gc"),
    "sloping shoulders": ("hf", "tf", "hb", "tb", "ub", "Gc", "wb", "wf", "Pd"),
    "square shoulders": ("hf", "tf", "hb", "tb", "ub", "Gc", "wb", "wf", "Pd"),
    "forward shoulders": ("hf", "tf", "hb", "tb", "ub", "G", "BP"),
    "round back": ("ub", "wb", "CBw", "hf", "tf", "G", "BP", "wf", "CFw"),
    "long waist": ("CBw", "wb", "D1b", "D2b", "CFw", "wf", "D1", "D2", "BP", "G"),
    "short waist": ("CBw", "wb", "D1b", "D2b", "CFw", "wf", "D1", "D2", "BP", "G"),
    "narrow back": ("tb", "ub", "pb"),
    "sway back": ("CBw", "wb", "Pd", "ub"),
    "scoop front armhole": ("tf", "G", "pf"),
}
"""Marks that the hands' work brings to their very place."""


@pytest.mark.parametrize("word", EXACT)
def test_hands_and_numbers_come_to_the_same_block(
    monkeypatch: pytest.MonkeyPatch, word: str
) -> None:
    kind = BY_WORD[word]
    for by in (kind.usual[0], sum(kind.usual) / 2):
        if word == "round back":
            by = 0.6
        b = block_of(monkeypatch, P92, kind(do=word, by=by))
        for mark in EXACT[word]:
            off = distance(b.by_hand.points[mark], b.trued.points[mark])
            assert off < 0.2 * MM, (word, by, mark, off)


KEPT = {
    "close front neck": ("F", ("cf", "waist", "side high", "side low", "shoulder")),
    "close front armhole": ("F", ("neck", "cf", "shoulder", "side high", "side low")),
    "scoop front armhole": ("F", ("neck", "shoulder", "side high", "side low")),
    "full bust": ("F", ("neck", "shoulder", "side low", "side high")),
    "lower bust point": ("F", ("neck", "shoulder", "cf", "waist")),
    "raise bust point": ("F", ("neck", "shoulder", "cf", "waist")),
    "sloping shoulders": ("B", ("shoulder", "armhole", "waist", "neck")),
    "square shoulders": ("B", ("shoulder", "armhole", "waist", "neck")),
    "forward shoulders": ("F", ("shoulder", "cf", "side high", "side low", "waist")),
    "round back": ("B", ("neck", "armhole", "side", "waist", "waist side")),
    "narrow back": ("B", ("neck", "shoulder", "side", "waist", "cb")),
    "sway back": ("B", ("neck", "shoulder", "armhole", "side")),
    "long waist": ("F", ("neck", "shoulder", "armhole", "side high", "waist")),
    "short waist": ("B", ("neck", "shoulder", "armhole", "waist", "waist side")),
}
"""Edges beside the alteration, which keep their lengths."""


@pytest.mark.parametrize("word", KEPT)
def test_paper_beside_the_alteration_keeps_its_lengths(
    monkeypatch: pytest.MonkeyPatch, word: str
) -> None:
    kind, (code, edges) = BY_WORD[word], KEPT[word]
    b = block_of(monkeypatch, P92, kind(do=word, by=kind.usual[0]))
    slack = 1.5 * MM if "shoulders" in word else 0.2 * MM  # the armhole is redrawn
    for e in edges:
        off = b.trued.length(code, e) - b.before.length(code, e)
        assert abs(off) < slack, (code, e, off)
    other = "B" if code == "F" else "F"
    if "shoulders" not in word and "waist" not in word:
        was, now = b.before.piece(other), b.trued.piece(other)
        for edge in was.edges:
            off = edge.length - now.edge(edge.name).length
            assert abs(off) < 0.2 * MM, edge.name


def test_the_bust_dart_takes_up_what_the_neck_gives(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The angle is the invariant of a transfer about one point (transformations
    1.1)."""
    d = fitted(P92, closed_back(), BY_WORD["close front neck"](by=0.8))
    n = d.numbers
    reach = distance(d.sheet.points["BP"], Point(n["fit1.x_Q"], n["fit1.y_Q"]))
    turned = math.degrees(2 * math.asin(0.8 / (2 * reach)))
    assert n["theta"] - n["theta@0"] == pytest.approx(turned, abs=0.001)
    assert n["sigma_f@0"] - n["sigma_f"] == pytest.approx(turned, abs=0.001)
    b = block_of(monkeypatch, P92, BY_WORD["close front neck"](by=0.8))
    f = b.by_hand.piece("F")
    opened = degrees_between(
        f.edge("dart low").path.start - b.by_hand.points["BP"],
        f.edge("dart high").path.end - b.by_hand.points["BP"],
    )
    assert opened == pytest.approx(n["theta"], abs=0.01)


def test_a_full_bust_widens_the_bust_and_not_the_waist() -> None:
    """Length 0.8 to 1.0 of the opening (cutting and costing 6), the waist the same."""
    plain = draft(order(P92, closed_back()))
    for by in (0.6, 1.2, 2.0):
        d = fitted(P92, closed_back(), BY_WORD["full bust"](by=by))
        grown = d.sheet.length("FC", "cf") - plain.sheet.length("FC", "cf")
        assert 0.8 * by <= grown <= by
        wider = d.numbers["X"] - plain.numbers["X"]
        assert 0.6 * by < wider < by

        def waist(of: Draft) -> float:
            return sum(of.sheet.length(c, "waist") for c in ("FC", "FS"))

        assert waist(d) == pytest.approx(waist(plain), abs=0.3 * MM)


def test_a_sway_back_shortens_the_centre_and_not_the_waist() -> None:
    features = closed_back(lines="darts")
    plain = draft(order(P92, features))
    for by in (0.6, 1.3, 2.0):
        d = fitted(P92, features, BY_WORD["sway back"](by=by))
        assert not d.failed, d.failures()
        centre, side = (
            plain.sheet.length("B", e) - d.sheet.length("B", e) for e in ("cb", "side")
        )
        assert 0.9 * by < centre <= by  # it is taken in by the zip's seam, and leans
        assert abs(side) < 0.2 * MM

        def waist(of: Draft) -> float:
            return sum(of.sheet.length("B", e) for e in ("waist", "waist side"))

        assert waist(d) == pytest.approx(waist(plain), abs=0.3 * MM)


@pytest.mark.parametrize(
    ("way", "most"), [(BackShoulder.TO_PANEL, 0.8), (BackShoulder.NECK, 1.8)]
)
def test_a_round_back_goes_into_the_shoulder_dart(
    way: BackShoulder, most: float
) -> None:
    """A dart led to the panel is soon at its limit (first garment 6.1)."""
    features = closed_back(way, dart=0.6)
    for by in (0.6, most):
        d = fitted(P92, features, BY_WORD["round back"](by=by))
        assert not d.failed, d.failures()
        n = d.numbers
        assert n["se"] == n["se@0"]
        g = math.radians(n["sigma_b@0"])
        whole = n["SH"] + 0.6 + n["se"]
        grown = math.hypot(whole * math.cos(g), whole * math.sin(g) + by) - whole
        assert n["sd"] - 0.6 == pytest.approx(grown)
    with pytest.raises(OrderError, match="give the back shoulder a dart"):
        fitted(P92, closed_back(), BY_WORD["round back"](by=2.0))


@pytest.mark.parametrize("second", [a for a in OF_BODICE if a != "close front armhole"])
def test_a_second_alteration_is_made_on_altered_paper(second: str) -> None:
    first = BY_WORD["close front armhole"](by=0.5)
    by = min(0.6, BY_WORD[second].usual[1])
    features = closed_back(BackShoulder.NECK, dart=1.0)
    d = fitted(P92, features, first, BY_WORD[second](by=by))
    assert not d.failed, d.failures()
    again = fitted(P92, features, BY_WORD[second](by=by), first)
    assert not again.failed, again.failures()


def test_alterations_go_together_and_are_told() -> None:
    told = (
        BY_WORD["full bust"](by=0.8),
        BY_WORD["sloping shoulders"](by=0.8),
        BY_WORD["round back"](by=0.6),
        BY_WORD["close front neck"](by=0.6),
        BY_WORD["long waist"](by=0.8),
    )
    d = fitted(P92, closed_back(), *told)
    assert not d.failed, d.failures()
    mine = [s for s in d.steps if s.feature == "fitting"]
    assert {a.key for s in mine for a in s.amounts} >= {f"fit{i}" for i in range(1, 6)}
    assert all(s.after is not None or s.at is not None for s in mine)


def test_a_house_rule_and_a_choice_stay_with_the_number_before_the_fitting() -> None:
    house = 'unit = "cm"\n[rules]\nnr = "2.2 cm"\nsigma_f = "SS + 1"\n'
    features = swapped(closed_back(), Block(back_shoulder_ease=0.3))
    d = fitted(
        P92,
        features,
        BY_WORD["sloping shoulders"](by=1.0),
        BY_WORD["round back"](by=0.8),
        house=house,
    )
    n = d.numbers
    assert not d.failed, d.failures()
    assert n["sigma_f@0"] == pytest.approx(n["SS"] + 1)
    assert n["sigma_f"] > n["sigma_f@0"] + 2
    assert n["se@0"] == pytest.approx(0.3)
    assert n["se"] > 0.4


def test_a_changed_amount_is_drawn_anew() -> None:
    room, kind = Workroom(), BY_WORD["close front neck"]
    for by in (0.5, 1.0, 0.7):
        features = (*closed_back(), altered(kind(by=by)))
        kept = room.draft(order(P92, features)).sheet
        fresh = draft(order(P92, features)).sheet
        assert kept == fresh


def test_too_much_on_one_slash_is_refused() -> None:
    for kind in ALTERATIONS:
        with pytest.raises(ValueError, match="at most"):
            kind(by=kind.limit() + 0.3)
        with pytest.raises(ValueError, match="more than nothing"):
            kind(by=-0.5)
        assert kind.usual[0] < kind.usual[1] <= kind.most


def test_a_round_back_does_not_go_with_an_open_back() -> None:
    with pytest.raises(OrderError, match="cuts the blades away"):
        fitted(P92, main_features(), BY_WORD["round back"](by=0.6))


@pytest.mark.parametrize("i", [0, 2, 3, 5])
def test_a_scoop_that_the_draft_would_undo_stays_as_it_was_cut(i: int) -> None:
    """On these women a guard of the upper curve holds the pitch (C16): drawn anew, the
    armhole is where it was. Paper and mark both keep what was cut at the fitting, and
    the panel line begins there."""
    scooped = fitted(
        woman(i),
        main_features(),
        BY_WORD["scoop front armhole"](by=0.54),
        rules=RuleSet.SURVEY,
    )
    start = scooped.sheet.edge("FC", "panel").path
    arm = scooped.sheet.edge("FC", "armhole").path
    at = scooped.sheet.points["Qf"]
    assert arm.nearest(at)[1] < 0.1 * MM
    assert start.nearest(at)[1] < 0.1 * MM

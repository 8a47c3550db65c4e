"""Ease tables and size tables."""

import pytest

from clothwright.body import BodyError, read_body
from clothwright.body.ease import Level, ease, knits, most_negative, places
from clothwright.body.sizes import size_tables
from clothwright.rules import Hand


def test_ease_of_a_fitted_bodice() -> None:
    """Bust 6 to 8, fitted waist seam 2 to 4 (common practice, no source)."""
    assert ease("bust (dress, blouse)", Level.FITTED) == (6.0, 8.0)
    assert ease("waist, fitted waist seam", Level.FITTED) == (2.0, 4.0)
    low, high = ease("bust (dress, blouse)", Level.FITTED, bust=150)
    assert low == pytest.approx(6 * 1.25) and high == pytest.approx(8 * 1.25)
    with pytest.raises(KeyError, match="places are"):
        ease("nose", Level.FITTED)


def test_ease_never_shrinks_from_level_to_level() -> None:
    for levels in places().values():
        lows = [levels[v][0] for v in Level if v in levels]
        assert lows == sorted(lows)


def test_knits_and_the_half_stretch_rule() -> None:
    """Check values G27, G28 (exact): −20 % at 50 %, −9.09 % at 20 %."""
    assert most_negative(0.5) == pytest.approx(-0.20)
    assert most_negative(0.2) == pytest.approx(-0.0909, abs=1e-4)
    assert [k.name for k in knits()][0] == "firm"


def test_a_size_fills_in_what_is_not_taken() -> None:
    """Misses size 8 (ASTM D5585-11e1, public summary): bust 36 1/4 in."""
    body = read_body(
        'unit = "in"\nsize_table = "misses"\nsize = "8"\n[measures]\nW = "28"\n'
        'H = "39"\nHT = "65"\n',
        "size.toml",
    )
    assert body["B"] == pytest.approx(36.25 * 2.54)
    assert body.values["B"].hand is Hand.SIZE_TABLE
    assert body["W"] == pytest.approx(28 * 2.54)
    assert body.values["W"].hand is Hand.TAKEN
    # published values from memory (medium height, size 12): bust 88, neck 37
    assert size_tables()["medium height"]["12"]["B"] == 88.0
    with pytest.raises(BodyError, match="has no size 99"):
        read_body('unit = "cm"\nsize_table = "misses"\nsize = "99"\n', "s.toml")
    with pytest.raises(BodyError, match="misses"):
        read_body('unit = "cm"\nsize_table = "mister"\nsize = "8"\n', "s.toml")


def test_estimated_widths_agree_with_the_published_table() -> None:
    """Back width of the medium height table within 0.5 cm of 0.25·Bf + 12.4 for a cup
    of 5 (published source, value from memory)."""
    for size in size_tables()["medium height"].values():
        assert 0.25 * size["B"] + 12.4 == pytest.approx(size["XB"], abs=0.5)

"""What is drawn for each meaning; dashes after truing 10, notches after truing 6."""

import math

import pattern_fixture as fx
import pytest
from shapely.geometry import LineString, Polygon

from clothwright.curves import Point, distance, shift, turn
from clothwright.finishing.boxes import text_box
from clothwright.finishing.drawn import Meaning
from clothwright.sheets.looks import LOOKS, divided, moved, scaled, strokes
from clothwright.sheets.whole import opened
from finished import made

MM = 0.1


def _drawn(meaning: Meaning) -> list[tuple[Point, Point]]:
    found = [k for k in strokes(fx.front()) if k.meaning is meaning]
    return [(k.path.start, k.path.end) for k in found]


def test_dashes_are_the_trades() -> None:
    assert LOOKS[Meaning.SEW].dashes == (6, 3)
    assert LOOKS[Meaning.FOLD].dashes == (12, 3, 3, 3)
    assert LOOKS[Meaning.GRAIN].dashes == LOOKS[Meaning.CUT].dashes == ()
    assert LOOKS[Meaning.CUT].width == 0.4


def test_a_notch_is_a_t_on_the_net_line() -> None:
    lines = _drawn(Meaning.NOTCH)
    notches = fx.front().notches
    assert len(lines) == 2 * len(notches)
    for notch, stem, bar in zip(notches, lines[::2], lines[1::2], strict=True):
        assert stem == (notch.outer, notch.net)
        middle = (bar[0] + bar[1]) * 0.5
        assert distance(middle, notch.net) < 0.01 * MM
        u, v = stem[1] - stem[0], bar[1] - bar[0]
        assert abs(u.x * v.x + u.y * v.y) < 1e-9


def test_grain_arrows_follow_the_nap() -> None:
    """Two heads without nap, one with."""
    heads = [k for k in strokes(fx.front()) if k.solid and k.meaning is Meaning.GRAIN]
    assert len(heads) == 2
    (one,) = (k for k in strokes(fx.back()) if k.solid)
    grain = fx.back().lines[-1].path
    assert one.path.start == grain.end


def test_the_fold_is_not_cut() -> None:
    """Cut line and fold together are the outline; the bracket touches the fold."""
    piece = fx.front()
    kept, folded = divided(piece)
    assert len(kept) == len(folded) == 1
    total = kept[0].length + folded[0].length
    assert total == pytest.approx(piece.cut_line.length, abs=0.01 * MM)
    assert folded[0].length == pytest.approx(36, abs=0.01 * MM)
    heads = [k for k in strokes(piece) if k.solid and k.meaning is Meaning.BRACKET]
    assert [k.path.start.x for k in heads] == pytest.approx([0, 0], abs=1e-9)
    bracket = next(k for k in strokes(piece) if k.note == "fold bracket")
    assert all(p.x >= -1e-9 for p in bracket.path.flatten(0.01))


def test_tape_stays_on_its_edge() -> None:
    """The wave strays less than 2 mm and runs from end to end."""
    edge = next(k.path for k in fx.front().lines if k.meaning is Meaning.TAPE)
    wave = next(k.path for k in strokes(fx.front()) if k.meaning is Meaning.TAPE)
    assert distance(wave.start, edge.start) < 0.01 * MM
    assert distance(wave.end, edge.end) < 0.01 * MM
    assert max(edge.nearest(p)[1] for p in wave.flatten(0.01)) < 2 * MM


def test_ease_is_drawn_inside_its_edge() -> None:
    edge = next(k.path for k in fx.front().lines if k.meaning is Meaning.EASE)
    drawn = next(k.path for k in strokes(fx.front()) if k.meaning is Meaning.EASE)
    for p in drawn.flatten(0.01):
        place, gap = edge.nearest(p)
        assert gap == pytest.approx(0.25, abs=0.1 * MM)
        assert p.x < edge.at(place).x  # towards the middle of the front


def test_a_turned_piece_keeps_its_words_with_it() -> None:
    piece = fx.side_panel()
    m = shift((7.0, -3.0)) @ turn(Point(0, 0), 90)
    after = moved(piece, m)
    assert after.texts[0].at == m(piece.texts[0].at)
    assert after.texts[0].degrees == pytest.approx(piece.texts[0].degrees + 90)
    assert after.cut_line.area == pytest.approx(piece.cut_line.area)


@pytest.mark.parametrize("k", [0.5, 0.25])
def test_a_smaller_scale_is_smaller_and_still_read(k: float) -> None:
    """Lengths shrink, words are set anew: figures 1.5 mm, labels 1.4 mm at least."""
    for piece in made("peplum-top").drawn.pieces:
        small = scaled(piece, k)
        assert small.cut_line.length == pytest.approx(piece.cut_line.length * k)
        said = " ".join(t.text for t in small.texts)
        assert piece.name.upper() in said
        lines = [
            LineString(s.path.flatten(0.01))
            for s in strokes(small, figure=k)
            if s.meaning not in (Meaning.EASE, Meaning.TAPE)
        ]
        for t in small.texts:
            figure = t.meaning is Meaning.DIMENSION
            assert t.height >= (1.49 if figure else 1.39) * MM
            box = Polygon(text_box(t).corners(-0.1 * MM))
            assert not any(line.intersects(box) for line in lines), t.text
    assert scaled(fx.front(), 1.0) == fx.front()


def test_an_opened_piece_is_whole_and_symmetric() -> None:
    piece = fx.front()
    whole = opened(piece)
    assert whole.cut_line.closed
    assert whole.cut_line.area == pytest.approx(2 * piece.cut_line.area)
    left, _, right, _ = whole.cut_line.bounds()
    assert left == pytest.approx(-right, abs=0.01 * MM)
    sewn = [k for k in whole.lines if k.meaning is Meaning.SEW]
    assert len(sewn) == 4
    assert (
        len(whole.notches) == 2 * (len(piece.notches) - 1) + 1
    )  # the CF one is single
    outside = [whole.cut_line.nearest(n.outer)[1] for n in whole.notches]
    assert max(outside) < 0.01 * MM
    assert not whole.on_fold
    said = " ".join([t.text for t in whole.texts] + [c.how for c in whole.cuts])
    assert "fold" not in said  # cut 1, of single cloth
    assert "cut 1" in said
    assert opened(fx.back()) == fx.back()
    assert not any(math.isnan(p.x) for p in whole.cut_line.flatten(0.1))

"""The plot, read back by a small plotter of our own.

Unit 0.025 mm exactly; whole numbers; instructions and ranges of the safe subset.
"""

import re
from pathlib import Path

import pattern_fixture as fx
import pytest

from clothwright.sheets import SheetError, write_hpgl
from clothwright.sheets.hpgl import hpgl_of

UNIT = 0.025
"""mm"""

SAFE = {"IN", "PA", "LT", "SP", "PU", "PD", "SI", "DI", "LB", "FR"}
Stroke = tuple[int, list[tuple[int, int]]]


def _told(text: str) -> list[str]:
    out = []
    while text := text.lstrip("\n"):
        end = "\x03" if text.startswith("LB") else ";"
        word, _, text = text.partition(end)
        out.append(word)
    return out


def _strokes(text: str) -> list[Stroke]:
    """(pen, points) of every line drawn."""
    pen, at, down = 0, (0, 0), False
    out: list[Stroke] = []
    for word in _told(text):
        name, rest = word[:2], word[2:]
        if name == "SP":
            pen = int(rest)
        if name in ("PU", "PD"):
            numbers = [int(n) for n in rest.split(",")] if rest else []
            points = list(zip(numbers[::2], numbers[1::2], strict=True))
            if name == "PD":
                if down:
                    out[-1][1].extend(points)
                else:
                    out.append((pen, [at, *points]))
            down = name == "PD"
            at = points[-1] if points else at
    return out


def test_a_square_of_100_mm_is_4000_units() -> None:
    """4000 units of 0.025 mm."""
    text = hpgl_of(fx.of_pieces(fx.square_piece()))
    cuts = [points for pen, points in _strokes(text) if pen == 1]
    assert len(cuts) == 2  # the test square and the piece
    for ring in cuts:
        xs, ys = [p[0] for p in ring], [p[1] for p in ring]
        assert max(xs) - min(xs) == max(ys) - min(ys) == 4000
        assert ring[0] == ring[-1]
    assert cuts[0][0] == (0, 0)
    assert 4000 * UNIT == 100


def test_only_the_safe_subset() -> None:
    text = hpgl_of(fx.pattern())
    assert text.isascii()
    assert {w[:2] for w in _told(text)} <= SAFE
    assert text.count("IN;") == 1
    assert text.endswith("PU;SP0;\n")
    assert all(len(line) < 1000 for line in text.split("\n"))
    for word in _told(text):
        if word[:2] in ("PU", "PD"):
            assert re.fullmatch(r"[\d,]*", word[2:])


def test_curves_are_as_long_as_on_the_piece() -> None:
    """Cut lines in all: within 0.1 % of the true lengths."""
    found = sum(
        sum(
            ((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5
            for a, b in zip(p, p[1:], strict=False)
        )
        for pen, p in _strokes(hpgl_of(fx.of_pieces(fx.back(), fx.sector())))
        if pen == 1
    )
    wanted = fx.back().cut_line.length + fx.sector().cut_line.length + 40
    assert found * UNIT / 10 == pytest.approx(wanted, rel=0.001)


def test_nothing_is_mirrored() -> None:
    """The back's outline runs clockwise seen on paper: negative area with y up."""
    (_, back) = [p for pen, p in _strokes(hpgl_of(fx.of_pieces(fx.back()))) if pen == 1]
    ring = zip(back, back[1:], strict=False)
    assert sum(a[0] * b[1] - a[1] * b[0] for a, b in ring) < 0


def test_frames_reach_no_further_than_old_plotters() -> None:
    pattern = fx.pattern()
    text = hpgl_of(pattern, roll_width=80, frames=True)
    numbers = [int(n) for n in re.findall(r"(?<=[PUD,])\d+", text)]
    assert max(numbers) <= 32767
    frames = text.split("FR;")
    assert len(frames) > 1
    assert f"LB1 of {len(frames)}\x03" in frames[0]
    for frame in frames:
        xs = [p[0] for _, points in _strokes(frame) for p in points]
        assert max(xs) <= 800 / UNIT
    whole = sum(len(p) > 1 for _, p in _strokes(hpgl_of(pattern, roll_width=80)))
    assert sum(len(_strokes(f)) for f in frames) >= whole


def test_too_wide_is_told() -> None:
    with pytest.raises(SheetError, match=r"^Peplum does not fit on a roll of 30 cm"):
        hpgl_of(fx.of_pieces(fx.sector()), roll_width=30)
    with pytest.raises(SheetError, match=r"is more than an old plotter reaches"):
        hpgl_of(fx.of_pieces(fx.front()), frames=True)
    with pytest.raises(SheetError, match=r"^Roll width: 10 cm is outside 30 to 250 cm"):
        hpgl_of(fx.of_pieces(fx.front()), roll_width=10)


def test_written_twice_the_file_is_the_same(tmp_path: Path) -> None:
    write_hpgl(fx.pattern(), tmp_path / "a.plt")
    write_hpgl(fx.pattern(), tmp_path / "b.plt")
    assert (tmp_path / "a.plt").read_bytes() == (tmp_path / "b.plt").read_bytes()

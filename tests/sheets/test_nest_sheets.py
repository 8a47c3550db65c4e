"""What a nest says and is written as: labels, names, pictures, exchange files."""

import io
import itertools
from dataclasses import replace
from importlib import resources
from pathlib import Path

import pikepdf
import pytest
import svgpathtools
from ezdxf.entities.polyline import Polyline
from ezdxf.filemanagement import readfile
from shapely import LineString
from test_nest import (
    MM,
    NAMES,
    SIZES,
    form_of,
    kept_and_folded,
    lines_of,
    nested,
    singles,
)

from clothwright.curves import distance, heading
from clothwright.order.sizes import Asked, make_size, read_size_set
from clothwright.sheets import PageFormat, Scale
from clothwright.sheets.letters import width as width_of
from clothwright.sheets.looks import divided
from clothwright.sheets.nest import SLOT, nest
from clothwright.sheets.nest_dxf import nest_dxf_of
from clothwright.sheets.nest_looks import samples
from clothwright.sheets.nest_pdf import nest_pdf_of
from clothwright.sheets.nest_svg import nest_svg_of
from clothwright.sheets.nest_words import words_apart
from clothwright.sheets.whole import opened


def test_labels_tell_the_range_and_cut_lists_every_size() -> None:
    set_of = nested("peplum-top")
    for n in set_of.pieces:
        said = " ".join(t.text for t in n.common.texts)
        if "order 1" in said:  # a small piece bears its name only
            assert "4 sizes, 8 to 14" in said.replace("\u00a0", " "), n.common.code
    ((whose, lines),) = set_of.cut_lists
    assert whose == "sizes 8, 10, 12 and 14"
    assert len(lines) == 9
    assert lines[0] == "1. Centre front: shell, cut 1 on fold"


@pytest.mark.parametrize("name", NAMES)
def test_a_size_that_is_printed_alone_bears_its_name(name: str) -> None:
    """Each size has its place beside the name of every piece, all in one line."""
    for n in nested(name).pieces:
        shared, own = words_apart(n.common.texts)
        assert set(own) == set(SIZES), n.common.code
        assert not any(SLOT in t.text for t in shared)
        for before, after in itertools.pairwise(own[s][0] for s in SIZES):
            gap = distance(before.at, after.at)
            wide = width_of(before.text, before.height, bold=before.bold)
            wide += width_of(after.text, after.height, bold=after.bold)
            assert wide / 2 < gap < wide / 2 + before.height
            assert heading(after.at - before.at) == pytest.approx(before.degrees)


def test_half_scale_is_half_as_large() -> None:
    data, _ = nest_pdf_of(nested("peplum-top"), page=PageFormat.A0, scale=Scale.HALF)
    want = singles("peplum-top")["10"].pieces[0]
    with pikepdf.open(io.BytesIO(data)) as pdf:
        width = samples(SIZES)["10"].width
        first = next(lines_of(form_of(pdf, "size 10"), (width,)))
    kept = kept_and_folded(want)[0]
    assert LineString(first).length == pytest.approx(
        LineString(kept).length / 2, abs=MM
    )


def test_a_picture_has_a_group_for_each_size(tmp_path: Path) -> None:
    target = tmp_path / "nest.svg"
    target.write_text(nest_svg_of(nested("peplum-top")), "utf8")
    paths, attributes = svgpathtools.svg2paths(str(target))
    found = {}
    for path, a in zip(paths, attributes, strict=True):
        if a.get("class") == "cut line":
            size, code = a["id"].split(".")[:2]
            found[size, code] = path.length() / 10
    for size, drawn in singles("peplum-top").items():
        for piece in drawn.pieces:
            want = divided(piece)[0][0].length
            assert found[f"size-{size}", piece.code] == pytest.approx(
                want, abs=0.1 * MM
            )


def test_an_exchange_file_has_a_block_for_each_size(tmp_path: Path) -> None:
    target = tmp_path / "nest.dxf"
    target.write_bytes(nest_dxf_of(nested("peplum-top")).encode("ascii"))
    doc = readfile(target)
    blocks = [b.name for b in doc.blocks if not b.name.startswith("*")]
    assert len(blocks) == len(SIZES) * 9
    texts = [t.dxf.text for t in doc.modelspace().query("TEXT")]
    assert "Sample Size: 12" in texts
    for size, drawn in singles("peplum-top").items():
        for piece in drawn.pieces:
            block = doc.blocks.get(f"{piece.code}-{size}")
            said = [t.dxf.text for t in block.query("TEXT")]
            assert f"Size: {size}" in said
            ring = next(k for k in block.query("POLYLINE") if k.dxf.layer == "1")
            assert isinstance(ring, Polyline)
            points = [(p.x / 10, p.y / 10) for p in ring.points()]
            length = LineString([*points, points[0]]).length
            assert length == pytest.approx(opened(piece).cut_line.length, abs=MM)


def test_a_piece_that_some_sizes_lack_is_nested_for_the_others() -> None:
    patterns = dict(singles("peplum-top"))
    eight = patterns["8"]
    patterns["8"] = replace(
        eight, pieces=tuple(p for p in eight.pieces if p.code != "UP")
    )
    n = nest(patterns)
    behind = next(p for p in n.pieces if p.common.code == "UP")
    assert list(behind.each) == ["10", "12", "14"]
    assert len(n.cut_lists) == 2
    data, _ = nest_pdf_of(n)
    assert data.startswith(b"%PDF")


def test_what_is_cut_another_way_lies_apart() -> None:
    """The whole front of one size is not laid on the halves of the others."""
    patterns = dict(singles("peplum-top"))
    front, *rest = patterns["10"].pieces
    assert front.on_fold
    patterns["10"] = replace(patterns["10"], pieces=(opened(front), *rest))
    fronts = [n for n in nest(patterns).pieces if n.common.code == "FC"]
    assert [tuple(n.each) for n in fronts] == [("8", "12", "14"), ("10",)]
    said = [" ".join(t.text for t in n.common.texts) for n in fronts]
    assert "on fold" in said[0]
    assert "10" not in words_apart(fronts[0].common.texts)[1]


def test_a_nest_needs_no_words_on_its_sizes() -> None:
    """Drafted without places for words, as the command does, it is the same file."""
    place = Path(str(resources.files("clothwright.demo"))) / "peplum-top.toml"
    asked = Asked("medium height", SIZES, measures={"HT": "165 cm"})
    made = [
        make_size(s, words=False, figured=False) for s in read_size_set(place, asked)
    ]
    bare = {m.name: m.drawn for m in made if m.drawn is not None}
    assert not any(p.texts for d in bare.values() for p in d.pieces)
    assert nest_pdf_of(nest(bare)) == nest_pdf_of(nested("peplum-top"))


def test_one_size_is_a_nest_too() -> None:
    made = make_size(
        read_size_set(
            Path(str(resources.files("clothwright.demo"))) / "zip-top.toml",
            Asked("medium height", ("12",), measures={"HT": "165 cm"}),
        )[0]
    )
    assert made.drawn is not None
    data, _ = nest_pdf_of(nest({"12": made.drawn}))
    assert data.startswith(b"%PDF")

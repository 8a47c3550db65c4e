"""Nested sizes, read back from the files by layer and by block.

Reference: the pattern of each size drafted by itself. The PDF is read by pikepdf and
pypdfium2, the SVG by svgpathtools, the DXF by ezdxf; distances by shapely.
"""

import io
import itertools
import math
from collections.abc import Iterable, Iterator
from functools import cache
from importlib import resources
from pathlib import Path

import numpy as np
import pikepdf
import pypdfium2
import pytest
from shapely import LineString

from clothwright.curves import Point, cross, direction, distance, heading, mix
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, Meaning
from clothwright.order import draft, pattern
from clothwright.order.sizes import Asked, make_size, read_size_set
from clothwright.sheets import PageFormat
from clothwright.sheets.looks import divided
from clothwright.sheets.nest import Nest, NestAt, anchor, nest
from clothwright.sheets.nest_looks import samples, size_look, with_names
from clothwright.sheets.nest_pdf import nest_pdf_of

MM = 0.1
POINT = 2.54 / 72
Chain = list[tuple[float, float]]
SIZES = ("8", "10", "12", "14")
NAMES = ("peplum-top", "panelled-top", "sleeved-top")


@cache
def singles(name: str, sizes: tuple[str, ...] = SIZES) -> dict[str, DrawnPattern]:
    """Each size drafted and finished by itself."""
    place = Path(str(resources.files("clothwright.demo"))) / f"{name}.toml"
    asked = Asked("medium height", sizes, measures={"HT": "165 cm"})
    out = {}
    for sized in read_size_set(place, asked):
        assert sized.order is not None
        out[sized.name] = pattern(draft(sized.order)).drawn
    return out


@cache
def nested(name: str, at: NestAt = NestAt.WAIST) -> Nest:
    return nest(singles(name), at)


def shape(points: Chain) -> LineString:
    """A line, moved to where its first point is 0, 0 and its farthest one to the right
    of it: equal for lines that differ by a rigid motion."""
    p = np.asarray(points, dtype=float)
    p -= p[0]
    far = p[np.argmax(np.hypot(p[:, 0], p[:, 1]))]
    a = -math.atan2(far[1], far[0])
    turn = np.array([[math.cos(a), -math.sin(a)], [math.sin(a), math.cos(a)]])
    return LineString(p @ turn.T)


def strays(a: Chain, b: Chain) -> float:
    """How far two lines are from being the same shape, cm."""
    return float(shape(a).hausdorff_distance(shape(b)))


def kept_and_folded(piece: DrawnPiece) -> list[Chain]:
    """The outline as it is drawn: its cut parts, then the fold."""
    kept, folded = divided(piece)
    return [[(p.x, p.y) for p in part.flatten(0.0005)] for part in (*kept, *folded)]


def joined(chains: Iterable[Chain]) -> list[Chain]:
    """Lines that go on where the one before ends are one line: a fold is drawn in its
    net part and what lies in the allowance."""
    out: list[Chain] = []
    for chain in chains:
        if out and math.dist(out[-1][-1], chain[0]) < 0.1 * MM:
            out[-1] = [*out[-1], *chain[1:]]
        else:
            out.append(list(chain))
    return out


def cubic(p: Chain) -> Chain:
    """Points on a cubic after its first."""
    t = np.linspace(0, 1, 33)[1:, None]
    a, b, c, d = (np.asarray(q) for q in p)
    s = 1 - t
    points = s**3 * a + 3 * t * s**2 * b + 3 * t**2 * s * c + t**3 * d
    return [(float(x), float(y)) for x, y in points]


def lines_of(form: pikepdf.Object, width_mm: tuple[float, ...]) -> Iterator[Chain]:
    """The lines of a form drawn with a pen of some width, cm, y down."""
    now: Chain = []
    width = 0.0
    for told in pikepdf.parse_content_stream(form):
        if not isinstance(told, pikepdf.ContentStreamInstruction):
            continue
        op = str(told.operator)
        if op not in ("w", "m", "l", "c", "h", "S", "s", "B", "b"):
            continue
        n = [float(str(o)) * POINT for o in told.operands]
        spots = list(zip(n[::2], (-y for y in n[1::2]), strict=False))
        if op == "w":
            width = n[0] * 10
        elif op == "m":
            now = spots
        elif op == "l":
            now += spots
        elif op == "c":
            now += cubic([now[-1], *spots])
        elif op == "h":
            now.append(now[0])
        else:
            if any(abs(width - w) < 1e-3 for w in width_mm):
                yield now
            now = []


def form_of(pdf: pikepdf.Pdf, layer: str) -> pikepdf.Object:
    """The form of a layer."""
    for form in pdf.pages[0].Resources.XObject.values():
        group = form.get("/OC")
        if group is not None and str(group.get("/Name")) == layer:
            return form
    raise AssertionError(layer)


@pytest.mark.parametrize("name", NAMES)
def test_every_size_reads_back_from_its_layer(name: str) -> None:
    """Cut line and fold of every piece, within 0.1 mm of the piece drafted alone."""
    data, _ = nest_pdf_of(nested(name), page=PageFormat.A0)
    codes = [n.common.code for n in nested(name).pieces]
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for size, drawn in singles(name).items():
            width = samples(SIZES)[size].width
            alone = {p.code: p for p in drawn.pieces}
            want = joined(line for c in codes for line in kept_and_folded(alone[c]))
            found = [
                line
                for line in joined(
                    lines_of(form_of(pdf, f"size {size}"), (width, 0.35))
                )
                if LineString(line).length > 0.5  # notches are ticks of 0.4 mm too
            ]
            assert len(found) == len(want)
            for a, b in zip(found, want, strict=True):
                assert LineString(a).length == pytest.approx(
                    LineString(b).length, abs=MM
                )
                assert strays(a, b) < 0.1 * MM


@pytest.mark.parametrize("page", list(PageFormat))
def test_every_paper_has_every_layer(page: PageFormat) -> None:
    data, count = nest_pdf_of(nested("peplum-top"), page=page)
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert len(pdf.pages) == count
        told = pdf.Root.OCProperties
        names = [str(g.Name) for g in told.OCGs]
        assert names == [*(f"size {s}" for s in SIZES), "stitch lines"]
        assert [str(g.Name) for g in told.D.OFF] == ["stitch lines"]
    text = pypdfium2.PdfDocument(data)[0].get_textpage().get_text_bounded()
    for size in SIZES:
        assert size in text
    assert "sizes 8, 10, 12 and 14" in text


def _ink(data: bytes, on: set[str], page: int = 0) -> int:
    """How many dark pixels a page shows with these layers on alone."""
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(data)) as pdf:
        groups = list(pdf.Root.OCProperties.OCGs)
        shown = pdf.Root.OCProperties.D
        shown.ON = pikepdf.Array([g for g in groups if str(g.Name) in on])
        shown.OFF = pikepdf.Array([g for g in groups if str(g.Name) not in on])
        pdf.save(out)
    picture = pypdfium2.PdfDocument(out.getvalue())[page].render(
        scale=0.5, grayscale=True
    )
    return int((np.asarray(picture.to_numpy()) < 128).sum())


def test_a_size_is_switched_off_with_all_that_is_its_own() -> None:
    data, _ = nest_pdf_of(nested("peplum-top"), page=PageFormat.A0)
    none = _ink(data, set())
    one = _ink(data, {"size 8"})
    both = _ink(data, {"size 8", "size 14"})
    assert none < one < both
    # stitch lines alone are nobody's; with a size they are that size's
    assert _ink(data, {"stitch lines"}) == none
    assert _ink(data, {"size 8", "stitch lines"}) > one


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("at", list(NestAt))
def test_sizes_lie_on_each_other_at_one_point(name: str, at: NestAt) -> None:
    """One point, one grain, one fold; nothing is stretched."""
    for n in nested(name, at).pieces:
        pieces = list(n.each.values())
        middle = pieces[len(pieces) // 2]
        folds = [k.path for k in middle.lines if k.meaning is Meaning.FOLD]
        grains = set()
        for size, piece in n.each.items():
            grain = next(k.path for k in piece.lines if k.meaning is Meaning.GRAIN)
            grains.add(round(heading(grain.end - grain.start), 6))
            drafted = next(
                p for p in singles(name)[size].pieces if p.code == n.common.code
            )
            assert piece.cut_line.length == pytest.approx(
                drafted.cut_line.length, abs=1e-6
            )
            off = distance(anchor(piece, at), anchor(middle, at))
            if not folds:
                assert off < 1e-6
                continue
            way = direction(folds[0].start, folds[0].end)
            own = next(k.path for k in piece.lines if k.meaning is Meaning.FOLD)
            for end in (own.start, own.end):
                assert abs(cross(way, end - folds[0].start)) < 1e-6
            if at is NestAt.WAIST:
                assert off < 1e-6
        assert len(grains) == 1


def test_the_grain_of_a_nest_lies_inside_every_size() -> None:
    for n in nested("panelled-top").pieces:
        grain = next(k.path for k in n.common.lines if k.meaning is Meaning.GRAIN)
        for piece in n.each.values():
            ring = LineString(piece.cut_line.flatten(0.01))
            assert not ring.intersects(LineString([grain.start, grain.end]))


def test_looks_of_twenty_sizes_differ() -> None:
    looks = [size_look(i, 20) for i in range(20)]
    assert len(set(looks)) == 20
    for a, b in itertools.pairwise(looks):
        assert a.dashes != b.dashes


@pytest.mark.parametrize("name", NAMES)
def test_names_stand_in_their_own_line_and_in_no_other(name: str) -> None:
    """The middle of each lies on its size's cut line (or is beside its mark), and its
    letters touch no other size's."""
    for n in nested(name).pieces:
        named = with_names(n).each
        rings = {s: LineString(p.cut_line.flatten(0.005)) for s, p in named.items()}
        for size, piece in named.items():
            in_line = 0
            for t in piece.texts:
                assert t.text == size
                spot = LineString([t.at, t.at + Point(1e-9, 0)])
                if rings[size].distance(spot) > 0.01:
                    continue
                in_line += 1
                for other, ring in rings.items():
                    if other != size:
                        assert ring.distance(spot) > t.height / 2
            # lines that lie on those of others bear no name
            apart = any(
                rings[size].hausdorff_distance(r) > 1.0
                for s, r in rings.items()
                if s != size
            )
            assert in_line or not apart


def test_a_name_beside_a_mark_is_the_nearest_mark_s() -> None:
    place = Path(str(resources.files("clothwright.demo"))) / "peplum-top.toml"
    two = read_size_set(place, Asked(bodies=("brida.toml", "thea.toml")))
    drawn = {s.name: make_size(s).drawn for s in two}
    seen = 0
    for n in nest({s: d for s, d in drawn.items() if d is not None}).pieces:
        named = with_names(n).each
        marks = {
            s: [
                mix(k.path.start, k.path.end, 0.5)
                for k in p.lines
                if k.meaning in (Meaning.LOOP, Meaning.DRILL)
            ]
            for s, p in named.items()
        }
        for size, piece in named.items():
            for t in piece.texts:
                if t.height > 0.161 or not marks[size]:
                    continue
                near = {
                    s: min(distance(t.at, m) for m in of) for s, of in marks.items()
                }
                if near[size] < 0.4:
                    seen += 1
                    assert near[size] == min(near.values())
    assert seen > 10

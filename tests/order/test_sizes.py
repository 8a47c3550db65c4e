"""Size sets: read from the order or asked for, each size drafted and checked."""

import math
from importlib import resources
from pathlib import Path

import pytest

from clothwright.body.sizes import size_tables
from clothwright.order import OrderError, draft, pattern, read_order
from clothwright.order.sizes import Asked, make_size, read_size_set

IN = 2.54
MM = 0.1
NAMES = ("peplum-top", "zip-top", "panelled-top", "sleeved-top")


def demo(name: str = "peplum-top") -> Path:
    return Path(str(resources.files("clothwright.demo"))) / f"{name}.toml"


def written(folder: Path, more: str, name: str = "peplum-top") -> Path:
    """A demo order with something more in it."""
    for file in demo().parent.glob("*.toml"):
        (folder / file.name).write_text(file.read_text("utf8"), "utf8")
    target = folder / "order.toml"
    target.write_text(demo(name).read_text("utf8") + more, "utf8")
    return target


def medium() -> Asked:
    """Every size of the table of women of medium height, 165 cm tall."""
    return Asked(table="medium height", measures={"HT": "165 cm"})


def test_sizes_of_a_table_have_its_measures() -> None:
    """ASTM D5585-11e1, table 1 (public summary): bust 36 1/4 in of size 8, 38 3/4 of
    12."""
    asked = Asked("misses", ("8", "12"), measures={"HT": "65", "H": ("38", "41")})
    eight, twelve = read_size_set(demo(), asked)
    assert (eight.name, twelve.name) == ("8", "12")
    assert eight.told == "size 8 of the table misses"
    assert eight.order is not None
    assert twelve.order is not None
    assert eight.order.body["B"] == pytest.approx(36.25 * IN)
    assert twelve.order.body["B"] == pytest.approx(38.75 * IN)
    assert eight.order.body["H"] == pytest.approx(38 * IN)
    assert twelve.order.body["H"] == pytest.approx(41 * IN)
    assert eight.order.body["HT"] == twelve.order.body["HT"] == pytest.approx(65 * IN)


def test_the_order_may_say_it_itself(tmp_path: Path) -> None:
    more = (
        '\n[sizes]\ntable = "misses"\nsizes = ["8", "10"]\n'
        '[sizes.measures]\nHT = 65\nH = ["38", "39 1/2"]\n'
    )
    order = written(tmp_path, more)
    made = [make_size(s) for s in read_size_set(order)]
    assert [m.name for m in made] == ["8", "10"]
    assert all(m.drawn is not None for m in made)
    # the same order still drafts for its own client
    assert read_order(order).body.client == "Brida Hollin"
    # some of its sizes, with their own measures
    (ten,) = read_size_set(order, Asked(sizes=("10",)))
    assert ten.order is not None
    assert ten.order.body["H"] == pytest.approx(39.5 * IN)


def test_bodies_are_their_own_measures() -> None:
    sized = read_size_set(demo(), Asked(bodies=("brida.toml", "thea.toml")))
    assert [s.name for s in sized] == ["brida", "thea"]
    assert sized[0].told == "Brida Hollin, measured 6 February 2027"
    alone = pattern(draft(read_order(demo()))).drawn
    assert make_size(sized[0]).drawn == alone


def test_a_refused_size_says_why_and_the_others_are_made() -> None:
    """The cap of size 20 is too high for sleeves of 21 cm."""
    asked = Asked("misses", ("12", "20"), measures={"HT": "165 cm", "H": "104 cm"})
    twelve, twenty = (make_size(s) for s in read_size_set(demo("sleeved-top"), asked))
    assert twenty.drawn is None
    (sentence,) = twenty.refused
    assert "set length to 21.2 cm or more" in sentence
    assert twelve.drawn is not None
    assert not twelve.refused


def test_a_missing_measure_is_said_of_each_size() -> None:
    made = [make_size(s) for s in read_size_set(demo(), Asked("misses", ("8", "10")))]
    for m in made:
        (sentence,) = m.refused
        assert "HT is missing" in sentence


def test_the_measures_of_one_size_may_be_at_fault() -> None:
    asked = Asked("misses", ("8", "10"), measures={"HT": 65, "H": ("38", "wide")})
    eight, ten = read_size_set(demo(), asked)
    assert not eight.faults
    assert ten.order is None
    (sentence,) = ten.faults
    assert "size 10" in sentence
    assert "wide" in sentence


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (Asked(), "which sizes?"),
        (Asked("mister", ("8",)), 'write "misses" or "medium height"'),
        (Asked("misses", ("8", "9")), "no size 9; it has 00, 0, 2"),
        (Asked("misses", ("8", "8")), "size 8 stands twice"),
        (Asked("misses", ("8",), ("brida.toml",)), "not both"),
        (Asked(bodies=("brida.toml",), measures={"HT": 65}), "in its own"),
        (
            Asked("misses", ("8", "10", "12"), measures={"H": ("38", "39")}),
            "H is given 2 times for 3 sizes",
        ),
    ],
)
def test_a_set_at_fault_is_one_sentence(asked: Asked, said: str) -> None:
    with pytest.raises(OrderError) as e:
        read_size_set(demo(), asked)
    assert said in str(e.value)
    assert len(e.value.sentences) == 1


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("\n[sizes]\ntabel = 'misses'\n", "tabel is not known here"),
        ("\n[sizes]\ntable = 'misses'\nsizes = 8\n", "sizes is a list"),
        ("\n[sizes]\ntable = 'misses'\nbodies = ['thea.toml']\n", "not both"),
        ("\n[sizes]\ntable = 'misses'\nmeasures = 3\n", "[sizes.measures]"),
    ],
)
def test_a_table_of_sizes_at_fault(tmp_path: Path, more: str, said: str) -> None:
    with pytest.raises(OrderError) as e:
        read_size_set(written(tmp_path, more))
    assert said in str(e.value)


def test_a_body_whose_file_is_missing_is_refused_alone() -> None:
    brida, nobody = read_size_set(demo(), Asked(bodies=("brida.toml", "nobody.toml")))
    assert brida.order is not None
    assert nobody.order is None
    assert "no such file" in nobody.faults[0]


@pytest.mark.parametrize("name", NAMES)
def test_girths_grow_where_the_table_does(name: str) -> None:
    """Waist and neck of the finished garment, by the lengths of their seams, and the
    bust by the number of the block; the table's grow from size to size."""
    made = [make_size(s) for s in read_size_set(demo(name), medium())]
    kept = [m for m in made if m.figures]
    assert len(kept) >= 8
    rows = size_tables()["medium height"]
    before = None
    for m in kept:
        f = m.figures
        waist = math.fsum(f["seams"][s]["left length"] for s in ("S5", "S6"))
        neck = f["edges"]["FC.neck" if "FC.neck" in f["edges"] else "F.neck"]
        now = rows[m.name]["W"], waist, f["numbers"]["half"]["value"], neck
        if before is not None:
            assert now[0] > before[0]
            assert now[1] > before[1] + MM, m.name
            assert now[2] > before[2] + MM, m.name
            assert now[3] > before[3], m.name
        before = now

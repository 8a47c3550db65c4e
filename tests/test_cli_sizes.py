"""`clothwright sizes` and `size_run`: nested, apart, refused, stopped, on machines.

Sizes apart are compared byte for byte with `clothwright make` on one size's own
measures.
"""

import json
import sys
from collections.abc import Generator
from multiprocessing import active_children
from pathlib import Path

import pypdfium2
import pytest
from distributed import LocalCluster
from ezdxf.filemanagement import readfile
from typer.testing import CliRunner

import clothwright.api as cw
from clothwright import size_run
from clothwright.cli import app
from clothwright.order.sizes import Asked, read_size_set
from clothwright.size_run import Done, SizesError, run

RUN = CliRunner()
MISSES = ["--table", "misses", "--measure", "HT=65", "--measure"]


@pytest.fixture
def order(tmp_path: Path) -> Path:
    assert RUN.invoke(app, ["starter", str(tmp_path / "in")]).exit_code == 0
    return tmp_path / "in/peplum-top.toml"


def test_nested_sheets(order: Path) -> None:
    call = ["sizes", str(order), *MISSES, "H=38,39.5,41", "--sizes", "8,10,12"]
    done = RUN.invoke(app, call)
    assert done.exit_code == 0, done.output
    assert "Made, sizes 8, 10, 12: all seams meet." in done.stdout
    folder = order.parent / "peplum-top-sizes"
    assert {p.name for p in folder.iterdir()} == {
        "peplum-top-sizes-a4.pdf",
        "peplum-top-sizes.svg",
        "peplum-top-sizes.dxf",
    }
    pages = len(pypdfium2.PdfDocument(folder / "peplum-top-sizes-a4.pdf"))
    assert f"a4.pdf  {pages} pages" in done.stdout
    doc = readfile(folder / "peplum-top-sizes.dxf")
    assert "FC-12" in doc.blocks


def test_sizes_apart_are_those_made_alone(order: Path, tmp_path: Path) -> None:
    sheets = ["--only", "pdf", "--only", "svg", "--only", "dxf"]
    call = ["sizes", str(order), *MISSES, "H=38,41", "--sizes", "8,12", "--apart"]
    assert RUN.invoke(app, call).exit_code == 0
    for size, hip in (("8", "38"), ("12", "41")):
        (order.parent / "alone.toml").write_text(
            f'client = "Size {size}"\nunit = "in"\nsize_table = "misses"\n'
            f'size = "{size}"\n[measures]\nHT = 65\nH = {hip}\n'
        )
        alone = order.read_text("utf8").replace("brida.toml", "alone.toml")
        single = order.parent / "single.toml"
        single.write_text(alone, "utf8")
        into = tmp_path / size
        done = RUN.invoke(app, ["make", str(single), "--into", str(into), *sheets])
        assert done.exit_code == 0
        mine = order.parent / f"peplum-top-sizes/size-{size}"
        for end in ("-a4.pdf", ".svg", ".dxf"):
            one = (mine / f"peplum-top-size-{size}{end}").read_bytes()
            assert one == (into / f"single{end}").read_bytes()


def test_a_refused_size_is_named_and_the_others_are_made(order: Path) -> None:
    sleeved = order.with_name("sleeved-top.toml")
    measures = ["--measure", "HT=165 cm", "--measure", "H=104 cm"]
    call = ["sizes", str(sleeved), "--table", "misses", *measures, "--sizes", "10,20"]
    done = RUN.invoke(app, [*call, "--only", "svg"])
    assert done.exit_code == 3
    assert "Not made, size 20: sleeved-top.toml, set-in sleeve: the cap" in done.stdout
    assert "Made, size 10: all seams meet." in done.stdout
    text = (order.parent / "sleeved-top-sizes/sleeved-top-sizes.svg").read_text("utf8")
    assert 'id="size-10"' in text
    assert 'id="size-20"' not in text


def test_a_size_whose_checks_fail_is_not_made(order: Path) -> None:
    """A neck that reaches below the bust points of one of two bodies."""
    text = order.read_text("utf8").replace('depth = "3 1/8"', 'depth = "10 1/2"')
    order.write_text(text, "utf8")
    done = RUN.invoke(
        app, ["sizes", str(order), *MISSES, "H=41", "--sizes", "2,20", "--only", "svg"]
    )
    assert done.exit_code == 4, done.output
    assert "Not made, size 2: " in done.stdout
    assert "reaches below the bust points" in done.stdout
    assert "Made, size 20: all seams meet." in done.stdout


def test_when_every_size_is_refused_nothing_is_written(order: Path) -> None:
    done = RUN.invoke(app, ["sizes", str(order), "--table", "misses", "--sizes", "8"])
    assert done.exit_code == 3
    assert "Not made, size 8: " in done.stdout
    assert "--measure HT=65" in done.stdout
    assert not (order.parent / "peplum-top-sizes").exists()


@pytest.mark.parametrize(
    ("more", "code", "said"),
    [
        (["--table", "mister"], 3, '"misses" or "medium height"'),
        ([*MISSES, "H"], 2, "write NAME=value"),
        ([], 3, "which sizes?"),
        (["--bodies", "brida.toml", "--paper", "roll", "--roll", "5"], 5, "Roll width"),
    ],
)
def test_bad_wishes(order: Path, more: list[str], code: int, said: str) -> None:
    done = RUN.invoke(app, ["sizes", str(order), *more])
    assert done.exit_code == code
    assert said in done.stderr
    assert not (order.parent / "peplum-top-sizes").exists()


def test_bodies_and_figures(order: Path) -> None:
    call = ["sizes", str(order), "--bodies", "brida.toml,thea.toml", "--json"]
    done = RUN.invoke(app, [*call, "--only", "svg"])
    told = json.loads(done.stdout)
    assert told["format"] == 1
    assert list(told["sizes"]) == ["brida", "thea"]
    alone = cw.figures(cw.draft(cw.read_order(order)))
    assert told["sizes"]["brida"]["figures"]["edges"] == alone["edges"]


def test_stopped_nothing_is_left(order: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(*_: object, **__: object) -> Generator[Done, None, None]:
        raise KeyboardInterrupt
        yield

    monkeypatch.setattr(size_run, "run", stopped)
    done = RUN.invoke(app, ["sizes", str(order), "--bodies", "brida.toml"])
    assert done.exit_code == 130
    assert "Stopped" in done.stderr
    assert not (order.parent / "peplum-top-sizes").exists()


def test_processes_give_the_same(order: Path) -> None:
    asked = Asked("medium height", measures={"HT": "165 cm"})
    sizes = read_size_set(order, asked)
    here = {d.made.name: d for d in run(sizes, cores=1)}
    there = {d.made.name: d for d in run(sizes, cores=2)}
    assert there == here
    assert len(here) == 11


def test_a_run_left_early_leaves_no_process(order: Path) -> None:
    """As Ctrl-C leaves it; workers are not waited for."""
    before = active_children()
    asked = Asked("medium height", measures={"HT": "165 cm"})
    working = run(read_size_set(order, asked), cores=2)
    next(working)
    assert len(active_children()) == len(before) + 2
    with pytest.raises(KeyboardInterrupt):
        working.throw(KeyboardInterrupt)
    assert active_children() == before


def test_machines_give_the_same(order: Path) -> None:
    """A scheduler with one worker on this machine."""
    asked = Asked("medium height", ("10", "12"), measures={"HT": "165 cm"})
    sizes = read_size_set(order, asked)
    here = {d.made.name: d for d in run(sizes)}
    with LocalCluster(
        n_workers=1, threads_per_worker=1, processes=True, dashboard_address=None
    ) as cluster:
        there = {d.made.name: d for d in run(sizes, dask=cluster.scheduler_address)}
    assert there == here


def test_without_dask_it_is_said_plainly(
    order: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    sizes = read_size_set(order, Asked(bodies=("brida.toml",)))
    with pytest.raises(SizesError, match="needs the package distributed"):
        list(run(sizes, dask="tcp://127.0.0.1:9"))


def test_from_python(order: Path) -> None:
    made = cw.sizes(
        order,
        table="medium height",
        sizes=("10", "12"),
        measures={"HT": "165 cm"},
    )
    patterns = {m.name: m.drawn for m in made if m.drawn}
    laid = cw.nest(patterns, cw.NestAt.GRAIN)
    target = order.with_name("nest.pdf")
    assert cw.write_nest_pdf(laid, target, page=cw.PageFormat.A0) >= 1

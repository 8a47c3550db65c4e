"""The workroom's commands on the demo: pages, JSON, refusals."""

import json
from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

import pdfplumber
import pytest
from typer.testing import CliRunner, Result

from clothwright.cli import app
from clothwright.making.thread import thread_told
from clothwright.units import Unit
from finished import ORDERS

RUN = CliRunner()
METRES = ("--cloth", "shell=1.6", "--cloth", "lining=0.3", "--cloth", "interlining=0.6")


@cache
def demo() -> Path:
    folder = Path(mkdtemp())
    assert RUN.invoke(app, ["starter", str(folder)]).exit_code == 0
    return folder


def run(command: str, name: str, *more: str) -> Result:
    return RUN.invoke(app, [command, str(demo() / f"{name}.toml"), *more])


def page_text(path: Path) -> str:
    with pdfplumber.open(path) as pdf:
        return "\n".join(p.extract_text() for p in pdf.pages)


def test_the_starter_brings_rates() -> None:
    assert (demo() / "rates.toml").is_file()


@pytest.mark.parametrize("name", ORDERS)
def test_the_making_order_has_every_operation(name: str, tmp_path: Path) -> None:
    told = json.loads(run("making", name, "--json").stdout)
    done = run("making", name, "--into", str(tmp_path))
    assert done.exit_code == 0, done.output
    text = page_text(tmp_path / f"{name}-making.pdf")
    flat = " ".join(text.split())
    for op in told["operations"]:
        assert f"{op['number']} {op['title']}" in flat, op
        for seam in op["seams"]:
            words = seam["pieces"].split()[:2]  # the rest may be on another line
            assert " ".join(words) in flat
    assert "nothing here shows that a rule or a standard is met" in flat


@pytest.mark.parametrize("name", ORDERS)
def test_no_word_runs_over_the_margin(name: str, tmp_path: Path) -> None:
    """Nothing is printed outside 15 mm of the paper's edges (1 mm of leeway)."""
    for command in ("making", "cutting"):
        assert run(command, name, "--into", str(tmp_path)).exit_code == 0
        with pdfplumber.open(tmp_path / f"{name}-{command}.pdf") as pdf:
            for page in pdf.pages:
                edge = 15 / 25.4 * 72
                assert min(c["x0"] for c in page.chars) > edge
                assert max(c["x1"] for c in page.chars) < page.width - edge


def test_the_cutting_sheet_of_order_one(tmp_path: Path) -> None:
    """Rows 33 and 34 of the worked example: 22 loops, 51.41 in of cord, buttons of
    7/16 in = 17.5 lignes; 1 ligne is 1/40 in."""
    told = json.loads(run("cutting", "peplum-top", "--json").stdout)
    (button,) = [x for x in told["notions"] if x["what"] == "ball button"]
    assert (button["count"], button["spare"], button["lignes"]) == (23, 1, 17.5)
    (cord,) = [x for x in told["strips"] if x["what"] == "bias cord"]
    assert cord["count"] == 22
    assert cord["in_all"] == pytest.approx(130.59, abs=0.01)
    pieces = [p["piece"] for p in told["cloths"]["shell"]]
    assert sorted(pieces) == sorted(
        ("FC", "FS", "BC", "BS", "UP", "PF", "PB", "FF", "BF")
    )
    assert [p["piece"] for p in told["cloths"]["lining"]] == ["UP"]
    assert run("cutting", "peplum-top", "--into", str(tmp_path)).exit_code == 0
    text = page_text(tmp_path / "peplum-top-cutting.pdf")
    for words in (
        "22 + 1 to spare",
        "11 mm, 17.5 ligne",
        "51⁷⁄₁₆ in",
        "reels of 109 yd",
    ):
        assert words in text


def test_thread_is_told_as_the_workroom_measures() -> None:
    """A yard is 0.9144 m; 100 m on a reel are 109 yd of it."""
    assert [thread_told(147.0, unit) for unit in Unit] == ["147 m", "161 yd"]
    assert [thread_told(5.0, unit) for unit in Unit] == ["5.0 m", "5.5 yd"]
    assert "of 109 yd." in run("cutting", "peplum-top").stdout


def test_the_cost_page_writes_a_fraction(tmp_path: Path) -> None:
    bought = ("--cloth", "shell=1 5/8 yd", *METRES[2:])
    done = run("cost", "peplum-top", *bought, "--into", str(tmp_path))
    assert done.exit_code == 0, done.output
    text = page_text(tmp_path / "peplum-top-cost.pdf")
    assert "1⅝ yd" in text and "1 5/8" not in text


def test_cost_and_quote_pages(tmp_path: Path) -> None:
    wish = (*METRES, "--new-block", "--into", str(tmp_path))
    assert run("cost", "peplum-top", *wish).exit_code == 0
    text = page_text(tmp_path / "peplum-top-cost.pdf")
    for words in ("411.30", "143.96", "620.95", "621.00", "248.40", "27.00 an hour"):
        assert words in text
    done = run("cost", "peplum-top", *wish, "--quote", "--on", "2027-02-06")
    assert done.exit_code == 0, done.output
    text = page_text(tmp_path / "peplum-top-quote.pdf")
    for words in ("555.31", "621.00", "248.40", "372.60", "8 March 2027"):
        assert words in text
    for secret in ("27.00", "35 %", "411.30", "hour", "overhead", "margin", "handling"):
        assert secret not in text


def test_an_outcome_beside_the_estimate(tmp_path: Path) -> None:
    took = tmp_path / "took.toml"
    took.write_text("[minutes]\nloop = 140\n", encoding="utf-8")
    wish = (*METRES, "--new-block", "--actual", str(took), "--into", str(tmp_path))
    assert run("cost", "peplum-top", *wish).exit_code == 0
    text = page_text(tmp_path / "peplum-top-outcome.pdf")
    assert "63.00" in text
    assert "13.50" in text


def test_plain_lines_add_up() -> None:
    lines = run("cost", "peplum-top", *METRES, "--new-block").stdout.splitlines()
    amount = {line[:34].strip(): line[34:].split()[-1] for line in lines[2:]}
    assert amount["A  Materials"] == "46.46"
    assert amount["loop"] == "49.50"
    assert amount["H  price"] == "621.00"
    told = run("cost", "peplum-top", *METRES, "--new-block", "--quote").stdout
    assert "555.31" in told
    assert "27.00" not in told


def test_cloth_by_a_lay_where_its_width_is_known(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The shell by a quick lay, at the order's own price: 18.40 a metre. No lay of it
    is shorter than its pieces' area over the usable width, 0.56 m."""
    monkeypatch.setattr("clothwright.cli_making.LAID", 0.1)
    said = ("--cloth", "lining=0.3", "--cloth", "interlining=0.6")
    done = run("cost", "peplum-top", *said, "--json")
    assert done.exit_code == 0, done.stderr
    line = json.loads(done.stdout)["lines"][0]
    metres = Decimal(line["quantity"].removesuffix(" m"))
    assert Decimal("0.6") < metres < 2
    assert metres % Decimal("0.1") == 0  # as the shop sells it
    assert Decimal(line["amount"]) == metres * Decimal("18.40")
    assert f"shell: {metres} m, by a lay of 0.1 s; --cloth shell=" in done.stderr


def test_cloth_of_no_width_is_asked_for(tmp_path: Path) -> None:
    text = (demo() / "peplum-top.toml").read_text(encoding="utf-8")
    order = demo() / "narrow.toml"
    order.write_text(text.replace('width = "138 cm"\n', ""), encoding="utf-8")
    done = run("cost", "narrow", "--cloth", "shell=1.6", "--cloth", "interlining=0.6")
    assert done.exit_code == 2
    assert "How much is bought of lining is not known" in done.stderr
    assert '--cloth "lining=1 3/4 yd"' in done.stderr  # the order is in inches


def test_cloth_bought_in_yards() -> None:
    """1 5/8 yd of the crêpe, sold by the metre at 18.40: 16.82 a yard (18.40 × 0.9144 =
    16.825), 27.33 in all."""
    bought = ("--cloth", "lining=0.3", "--cloth", "interlining=0.6")
    done = run("cost", "peplum-top", "--cloth", "shell=1 5/8 yd", *bought)
    line = next(x for x in done.stdout.splitlines() if "ink crêpe" in x)
    assert "1 5/8 yd" in line
    assert "16.82" in line
    assert line.endswith("27.33")
    wrong = run("cost", "peplum-top", "--cloth", "shell=much yd", *bought)
    assert wrong.exit_code == 2
    assert "--cloth shell=much yd: " in wrong.stderr


def test_cloth_that_somebody_else_pays() -> None:
    """The choir pays the cloth: 620.95 less 46.46, with the toile's 6.56 and 10 % of
    it, is 581.71; up to 582."""
    wish = ("--own-cloth", "--cloth", "toile=1.6", "--new-block", "--json")
    told = json.loads(run("cost", "peplum-top", *wish).stdout)
    assert (told["A"], told["F"], told["H"]) == ("7.22", "581.71", "582.00")


@pytest.mark.parametrize(
    ("more", "said", "code"),
    [
        (("--cloth", "shell"), "write --cloth shell=1.6", 2),
        (("--cloth", "velvet=2"), "nothing is cut from velvet", 2),
        ((*METRES, "--discount", "140"), "write 0 to 100", 2),
        ((*METRES, "--other", "dyeing"), "write --other dyeing=12.50", 2),
        ((*METRES, "--rates", "none.toml"), "there is no such file", 3),
        ((*METRES, "--actual", "none.toml"), "there is no such file", 3),
    ],
)
def test_bad_wishes_are_sentences(more: Sequence[str], said: str, code: int) -> None:
    done = run("cost", "peplum-top", *more)
    assert done.exit_code == code
    assert said in done.stderr


def test_a_house_s_own_times_and_price(tmp_path: Path) -> None:
    rates = tmp_path / "mine.toml"
    text = (demo() / "rates.toml").read_text(encoding="utf-8")
    rates.write_text(text.replace('"new block" = 75', "loop = 10"), encoding="utf-8")
    told = json.loads(
        run("making", "peplum-top", "--json", "--rates", str(rates)).stdout
    )
    assert [op["minutes"] for op in told["operations"] if op["task"] == "loop"] == [220]

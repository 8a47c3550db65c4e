"""`clothwright fitting`: what can be seen, what cures it, before and after."""

import json
from pathlib import Path

import pypdfium2
import pytest
from typer.testing import CliRunner, Result

from clothwright.cli import app
from clothwright.features.fittings import BY_WORD


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    assert CliRunner().invoke(app, ["starter", str(tmp_path / "in")]).exit_code == 0
    return tmp_path / "in" / "peplum-top.toml"


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(app, ["fitting", *map(str, words)])


def test_all_that_can_be_seen_is_listed() -> None:
    lines = run().stdout.splitlines()
    assert "Neck" in lines
    assert "  gape at front neck" in lines
    rows = json.loads(run("--json").stdout)
    assert {"place": "neck", "seen": "gape at front neck"} in rows


def test_candidates_are_told_with_amounts_and_what_they_move(demo: Path) -> None:
    told = run(demo, "--seen", "gape at front armhole").stdout
    assert "from 0 in to ¼ in" in told
    assert "side front, armhole: 4¹³⁄₁₆ in, then 4⁹⁄₁₆ in" in told
    assert "All seams meet." in told
    found = json.loads(run(demo, "--seen", "gape at front neck", "--json").stdout)
    first = found["candidates"][0]
    assert first["write"] == {"do": "close front neck", "by": "1/4 in"}
    assert first["usual"] == [0.5, 1.5]
    assert first["most"] == 2.5
    assert "FF" in first["moves"]
    assert found["candidates"][-1]["refused"]


def test_a_candidate_is_taken_and_compared(demo: Path, tmp_path: Path) -> None:
    new = demo.with_name("fitted.toml")
    done = run(
        *(demo, "--seen", "gape at front neck", "--by", "3/8"),
        *("--take", "1", "--write", new),
    )
    assert done.exit_code == 0, done.output
    assert 'do = "close front neck"' in new.read_text("utf8")
    out = tmp_path / "out"
    done = run(new, "--before", demo, "--into", out)
    assert done.exit_code == 0, done.output
    assert {p.name for p in out.iterdir()} == {
        "fitted-fitting.pdf",
        "fitted-fitting.json",
    }
    data = json.loads((out / "fitted-fitting.json").read_text("utf8"))
    assert data["amounts"] == ["front neck closed by ⅜ in"]
    assert data["seams meet"]
    assert data["edges"]["FC.neck"]["after"] < data["edges"]["FC.neck"]["before"]
    pdf = pypdfium2.PdfDocument(out / "fitted-fitting.pdf")
    words = " ".join(page.get_textpage().get_text_range() for page in pdf)
    assert "Front neck closed" in words
    assert "Side front (FS)" in words


def test_misuse_is_told(demo: Path, tmp_path: Path) -> None:
    for words, code, why in (
        ((demo,), 2, "say what was seen"),
        ((demo, "--seen", "zzz"), 2, "lists all that can be seen"),
        ((demo, "--seen", "gape at front neck", "--by", "wide"), 2, "--by"),
        ((demo, "--seen", "gape at front neck", "--by", "-1"), 2, "more than nothing"),
        ((demo, "--seen", "gape at front neck", "--take", "9"), 2, "--write"),
        ((demo, "--seen", "sleeve tight round the arm"), 3, "nothing here cures"),
        ((tmp_path / "no.toml", "--seen", "neck tight"), 3, "no such file"),
        ((demo, "--before", tmp_path / "no.toml"), 3, "no such file"),
    ):
        done = run(*words)
        assert done.exit_code == code, (words, done.output)
        assert why in done.stderr, (words, done.stderr)
        assert "Traceback" not in done.output


def test_every_alteration_is_listed_with_the_feature() -> None:
    told = CliRunner().invoke(app, ["features", "fitting"]).stdout
    for word in BY_WORD:
        assert f'do = "{word}"' in told

"""The examples run as they stand, and the docs name no machine's path."""

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from clothwright.cli import app

ROOT = Path(__file__).parents[1]


def test_the_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (ROOT / "README.md").read_text("utf8")
    (code,) = re.findall(r"```python\n(.*?)```", text, re.DOTALL)
    assert len([line for line in code.splitlines() if line.strip()]) <= 11
    monkeypatch.chdir(tmp_path)
    CliRunner().invoke(app, ["starter", "demo-out"])
    exec(compile(code, "README.md", "exec"), {})
    said = capsys.readouterr().out
    assert "slanted edge 11.09 in" in said
    assert (tmp_path / "demo-out/again.pdf").stat().st_size > 10_000
    assert [p.name for p in tmp_path.iterdir()] == ["demo-out"]


def test_the_book_s_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (ROOT / "docs/book.md").read_text("utf8")
    (code,) = re.findall(r"```python\n(.*?)```", text, re.DOTALL)
    monkeypatch.chdir(tmp_path)
    exec(compile(code, "book.md", "exec"), {})
    said = capsys.readouterr().out
    assert said == ("['Written down.', 'The cloth has a nap.']\nwaist 71.12 cm\n")


def test_the_sizes_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (ROOT / "docs/sizes.md").read_text("utf8")
    (code,) = re.findall(r"```python\n(.*?)```", text, re.DOTALL)
    monkeypatch.chdir(tmp_path)
    CliRunner().invoke(app, ["starter", "demo-out"])
    exec(compile(code, "sizes.md", "exec"), {})
    said = capsys.readouterr().out
    assert "brida: Brida Hollin, measured 6 February 2027, waist 73.7 cm" in said
    assert "2 pages" in said


def test_every_kind_stands_in_the_command_line_s_help() -> None:
    from clothwright.features import KINDS

    said = CliRunner().invoke(app, ["features"]).stdout.splitlines()
    told = [line[2:26].strip() for line in said if line.startswith("  ")]
    assert sorted(told) == sorted(KINDS)


def test_the_lay_s_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (ROOT / "docs/lay.md").read_text("utf8")
    (code,) = re.findall(r"```python\n(.*?)```", text, re.DOTALL)
    monkeypatch.chdir(tmp_path)
    CliRunner().invoke(app, ["starter", "demo"])
    path = tmp_path / "demo" / "sleeved-top.toml"
    exec(compile(code, "lay.md", "exec"), {"path": path})
    length, used, bought = capsys.readouterr().out.split(maxsplit=2)
    assert 80.0 < float(length) < 120.0
    assert 0.5 < float(used) < 0.9
    assert bought.endswith(" m\n")
    assert float(length) < 100 * float(bought.removesuffix(" m\n")) < 160.0

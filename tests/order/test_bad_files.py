"""Files that cannot be read or written: a plain sentence, and nothing half-written."""

import os
from pathlib import Path

import pytest
from typer.testing import CliRunner

from clothwright.cli import app
from clothwright.order import OrderError, draft, read_order
from order.test_bad_input import BODY, ORDER, plain, write_order


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    (tmp_path / "binary.toml").write_bytes(b"\xff\xfe\x00\x81")
    (tmp_path / "folder.toml").mkdir()
    for name in ("none.toml", "binary.toml", "folder.toml"):
        with pytest.raises(OrderError) as e:
            read_order(tmp_path / name)
        plain(str(e.value))
        assert name in str(e.value)


def test_a_file_without_end(tmp_path: Path) -> None:
    (tmp_path / "endless.toml").symlink_to("/dev/zero")
    with pytest.raises(OrderError, match="far too long for the order"):
        read_order(tmp_path / "endless.toml")


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    with pytest.raises(OrderError, match=r"pipe.toml is a pipe; name a file"):
        read_order(tmp_path / "pipe.toml")


def test_all_sheets_or_none(tmp_path: Path) -> None:
    """A folder in the way of one leaves no other, nor a passing file."""
    path, out = write_order(tmp_path, ORDER, BODY), tmp_path / "out"
    (out / "top.svg").mkdir(parents=True)
    only = ["--only", "dxf", "--only", "svg"]
    result = CliRunner().invoke(app, ["make", str(path), "--into", str(out), *only])
    assert result.exit_code == 5
    assert "top.svg was not written: a folder has this name" in result.stderr
    assert [p.name for p in out.iterdir()] == ["top.svg"]


def test_a_starter_writes_over_nothing(tmp_path: Path) -> None:
    (tmp_path / "ysolde.toml").write_text("mine", "utf8")
    result = CliRunner().invoke(app, ["starter", str(tmp_path)])
    assert result.exit_code == 5
    assert [p.name for p in tmp_path.iterdir()] == ["ysolde.toml"]


def test_the_command_line_says_it_and_writes_nothing(tmp_path: Path) -> None:
    runner = CliRunner()
    path = write_order(
        tmp_path, ORDER.replace('shape = "boat"', 'shape = "bote"'), BODY
    )
    result = runner.invoke(app, ["make", str(path), "--into", str(tmp_path / "out")])
    assert result.exit_code == 3
    assert "boat" in result.stderr
    assert not (tmp_path / "out").exists()


def test_a_file_in_the_way(tmp_path: Path) -> None:
    runner = CliRunner()
    path = write_order(tmp_path, ORDER, BODY)
    (tmp_path / "out").write_text("in the way")
    result = runner.invoke(app, ["make", str(path), "--into", str(tmp_path / "out")])
    assert result.exit_code == 5
    assert "out" in result.stderr
    assert (tmp_path / "out").read_text() == "in the way"


def test_a_full_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that fills while writing: no half file, the old one untouched."""
    import errno

    runner = CliRunner()
    path = write_order(tmp_path, ORDER, BODY)
    out = tmp_path / "out"
    out.mkdir()
    (out / "top.svg").write_text("the old sheet")

    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    result = runner.invoke(
        app, ["make", str(path), "--into", str(out), "--only", "svg"]
    )
    assert result.exit_code == 5
    assert "full" in result.stderr
    assert [p.name for p in out.iterdir()] == ["top.svg"]
    assert (out / "top.svg").read_text() == "the old sheet"


def test_a_byte_order_mark_is_no_fault(tmp_path: Path) -> None:
    path = write_order(tmp_path, "\ufeff" + ORDER, "\ufeff" + BODY)
    assert not draft(read_order(path)).failed


def test_an_order_and_its_measures_taken_for_each_other(tmp_path: Path) -> None:
    """Told as what they are: nobody empties an order of what no measures know."""
    CliRunner().invoke(app, ["starter", str(tmp_path / "demo")])
    at = tmp_path / "demo"
    done = CliRunner().invoke(app, ["measures", str(at / "peplum-top.toml")])
    assert done.exit_code == 3
    said = "peplum-top.toml is an order; its measures stand in brida.toml\n"
    assert done.stderr == said
    done = CliRunner().invoke(app, ["check", str(at / "brida.toml")])
    assert done.exit_code == 3
    assert "brida.toml holds a client's measures; name the order" in done.stderr


def test_that_a_child_is_too_small_is_said_first(tmp_path: Path) -> None:
    """The rules are a grown body's: it is not her tape that was wrong."""
    small = (
        'client = "Lise"\nunit = "cm"\n[measures]\nB = 60\nW = 55\nH = 63\nHT = 116\n'
    )
    child = ORDER.replace('unit = "in"\n', 'unit = "in"\nwearer = "child"\n')
    with pytest.raises(OrderError) as e:
        draft(read_order(write_order(tmp_path, child, small)))
    assert "are those of a grown body" in e.value.sentences[0]

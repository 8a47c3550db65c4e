"""Files are written whole or not at all, and refusals are one plain sentence."""

import errno
import os
from pathlib import Path

import pytest

from clothwright.sheets.write import SheetError, write_file


def test_a_file_is_written_and_replaced(tmp_path: Path) -> None:
    target = tmp_path / "top.pdf"
    write_file(target, b"one")
    write_file(target, b"two")
    assert target.read_bytes() == b"two"
    assert [p.name for p in tmp_path.iterdir()] == ["top.pdf"]


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(SheetError, match=r"no such folder; make it first"):
        write_file(tmp_path / "none" / "top.pdf", b"x")


def test_a_folder_of_that_name_is_told(tmp_path: Path) -> None:
    (tmp_path / "top.pdf").mkdir()
    with pytest.raises(SheetError, match=r"^top\.pdf was not written: a folder has"):
        write_file(tmp_path / "top.pdf", b"x")


def test_a_file_where_the_folder_should_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"mine")
    with pytest.raises(SheetError, match="a file is where its folder should be"):
        write_file(tmp_path / "out" / "top.pdf", b"x")
    assert (tmp_path / "out").read_bytes() == b"mine"


def test_a_full_disk_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "top.pdf"
    write_file(target, b"old")

    def full(_handle: int) -> None:
        raise OSError(errno.ENOSPC, "full")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(
        SheetError, match=r"^top\.pdf was not written: the disk is full"
    ):
        write_file(target, b"new and longer")
    assert target.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["top.pdf"]


def test_a_disk_that_knows_no_modes_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(_path: Path, _mode: int) -> None:
        raise PermissionError(errno.EPERM, "no modes here")

    monkeypatch.setattr(Path, "chmod", refused)
    write_file(tmp_path / "top.pdf", b"x")
    assert (tmp_path / "top.pdf").read_bytes() == b"x"

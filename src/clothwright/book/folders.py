"""Plain files in a folder or a zip: where an export goes, where an import comes from.

What comes in may have been made to do harm. Nothing is ever unpacked onto the disk:
files are read by name, each up to a limit as it is read, not as it is declared.
"""

import os
import stat
import tempfile
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path, PurePosixPath
from typing import Protocol

from clothwright.book.errors import BookError
from clothwright.book.private import private_file

MOST_FILES = 200_000
MOST_BYTES = 4 * 1024**3
"""Of all files that are read, together."""


class Sink(Protocol):
    """Where plain files go."""

    def put(self, name: str, data: bytes) -> None:
        """Write one file; folders in its name are made."""


class Source(Protocol):
    """Where plain files come from."""

    @property
    def names(self) -> frozenset[str]:
        """Names of all files, with / between folders."""

    def read(self, name: str, limit: int) -> bytes:
        """One file of at most `limit` bytes. Raises BookError."""


@contextmanager
def sink(target: Path) -> Iterator[Sink]:
    """A zip when the name ends so, else a new folder; whole or not at all.

    Raises BookError.
    """
    if target.suffix.lower() == ".zip":
        with private_file(target) as passing, zipfile.ZipFile(passing, "w") as z:
            yield _ZipSink(z)
        return
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise BookError(f"{target} is there already; name a new folder.")
    try:
        with tempfile.TemporaryDirectory(prefix=".", dir=target.parent) as beside:
            passing = Path(beside) / target.name
            passing.mkdir(mode=0o700)
            yield _FolderSink(passing)
            passing.replace(target)
    except OSError as e:
        raise BookError(
            f"{target} was not written ({e.strerror}); name another folder."
        ) from e


@contextmanager
def source(place: Path) -> Iterator[Source]:
    """A folder or a zip to read from. Raises BookError."""
    try:
        if place.is_dir():
            yield _FolderSource(place)
            return
        with zipfile.ZipFile(place) as z:
            yield _ZipSource(place.name, z)
    except FileNotFoundError:
        raise BookError(f"{place}: there is no such file or folder.") from None
    except zipfile.BadZipFile:
        raise BookError(
            f"{place.name} is no whole zip file; name a zip or a folder of an export."
        ) from None
    except OSError as e:
        raise BookError(f"{place.name} cannot be read ({e.strerror}).") from None


class _ZipSink:
    def __init__(self, archive: zipfile.ZipFile) -> None:
        self._archive = archive

    def put(self, name: str, data: bytes) -> None:
        entry = zipfile.ZipInfo(name)  # dated 1980: equal books make equal zips
        entry.external_attr = (stat.S_IFREG | 0o600) << 16
        packed = zipfile.ZIP_DEFLATED if name.endswith(".toml") else zipfile.ZIP_STORED
        self._archive.writestr(entry, data, packed)


class _FolderSink:
    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def put(self, name: str, data: bytes) -> None:
        target = self._folder / name
        target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle = os.open(target, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
        with os.fdopen(handle, "wb") as f:
            f.write(data)


class _FolderSource:
    def __init__(self, folder: Path) -> None:
        self._folder, self._read = folder, 0
        names = []
        for path in folder.rglob("*"):
            if path.is_symlink() or not (path.is_file() or path.is_dir()):
                raise BookError(
                    f"{path.name} in {folder.name} is a link; nothing was imported."
                )
            if path.is_file():
                names.append(path.relative_to(folder).as_posix())
            _few(len(names), folder.name)
        self.names = frozenset(names)

    def read(self, name: str, limit: int) -> bytes:
        with (self._folder / name).open("rb") as f:
            data = f.read(limit + 1)
        self._read = _small(name, len(data), limit, self._read)
        return data


class _ZipSource:
    def __init__(self, name: str, archive: zipfile.ZipFile) -> None:
        self._archive, self._read = archive, 0
        entries = archive.infolist()
        _few(len(entries), name)
        for entry in entries:
            _harmless(entry, name)
        files = [e.filename for e in entries if not e.is_dir()]
        if len(set(files)) < len(files):
            raise BookError(
                f"{name} holds two files of one name; nothing was imported."
            )
        self.names = frozenset(files)

    def read(self, name: str, limit: int) -> bytes:
        try:
            with self._archive.open(name) as f:
                data = f.read(limit + 1)
        except (zipfile.BadZipFile, zlib.error, EOFError, RuntimeError):
            # NotImplementedError, for what a zip may hold besides, is a RuntimeError
            raise BookError(f"{name} is damaged; nothing was imported.") from None
        self._read = _small(name, len(data), limit, self._read)
        return data


def _harmless(entry: zipfile.ZipInfo, name: str) -> None:
    """Refuse names that lead out of the folder, links, and locked files."""
    said = entry.filename
    path = PurePosixPath(said)
    if (
        path.is_absolute()
        or ".." in path.parts
        or "\\" in said
        or ":" in said
        or "\x00" in entry.orig_filename
    ):
        raise BookError(
            f"{name} holds a file that leads elsewhere ({said[:80]!r}); nothing was "
            "imported."
        )
    mode = entry.external_attr >> 16
    if mode and stat.S_IFMT(mode) not in (0, stat.S_IFREG, stat.S_IFDIR):
        raise BookError(f"{said} in {name} is a link; nothing was imported.")
    if entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise BookError(f"{name} is packed in an unusual way; pack it as a plain zip.")
    if entry.flag_bits & 1:
        raise BookError(f"{name} is locked with a password; unlock it first.")


def _few(files: int, name: str) -> None:
    if files > MOST_FILES:
        raise BookError(f"{name} holds too many files to be an export of a book.")


def _small(name: str, size: int, limit: int, read: int) -> int:
    """All bytes read so far, this file's included. Raises BookError past a limit."""
    if size > limit or read + size > MOST_BYTES:
        raise BookError(f"{name} is too large; nothing was imported.")
    return read + size

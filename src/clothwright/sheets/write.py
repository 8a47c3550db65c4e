"""Files that are written whole or not at all.

A file is written beside its target under a passing name, pushed to the disk and
then renamed over the target, so that a reader never meets half a pattern.
"""

import errno
import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path


class SheetError(ValueError):
    """An output that cannot be made: one plain sentence says where and why."""


_REASONS = {
    errno.ENOSPC: "the disk is full; free some space and write it again",
    errno.EDQUOT: "your share of the disk is full; free some space first",
    errno.EACCES: "it may not be written here; choose a folder of your own",
    errno.EPERM: "it may not be written here; choose a folder of your own",
    errno.EROFS: "this disk can only be read; choose another folder",
    errno.ENAMETOOLONG: "the name is too long; choose a shorter one",
    errno.ENOENT: "there is no such folder; make it first or choose another",
    errno.ENOTDIR: "a file is where its folder should be; choose another folder",
    errno.EISDIR: "a folder has this name already; choose another name",
}


def write_file(target: Path, data: bytes) -> None:
    """Write `data` to `target`, replacing a file of that name.

    Raises SheetError, and leaves what was there untouched, when it cannot be done.
    """
    with written(target) as passing:
        passing.write_bytes(data)


@contextmanager
def written(target: Path, mode: int = 0o644) -> Iterator[Path]:
    """A passing file to write to; it becomes `target` when all inside went well.

    Only its user may read it until then, and others as `mode` says. Raises SheetError,
    also for an OSError inside, and leaves what was there untouched.
    """
    try:
        if target.is_dir():
            raise IsADirectoryError(errno.EISDIR, "a folder")
        handle, name = tempfile.mkstemp(prefix=".", suffix=".part", dir=target.parent)
        os.close(handle)
        passing = Path(name)
        try:
            yield passing
            _push(passing)
            with suppress(PermissionError):  # a disk that knows no modes
                passing.chmod(mode)
            passing.replace(target)
        except BaseException:
            passing.unlink(missing_ok=True)
            raise
        if os.name == "posix":  # push the rename itself to the disk
            _push(target.parent)
    except OSError as e:
        reason = _REASONS.get(e.errno or 0, "the disk refused it")
        raise SheetError(f"{target.name} was not written: {reason}.") from e


@contextmanager
def all_or_none(folder: Path) -> Iterator[Path]:
    """A passing folder to write sheets to; they come to lie in `folder`, which is made
    where there is none, when all inside went well.

    Raises SheetError when they cannot, and then leaves what was there untouched.
    """
    above = [p for p in (folder, *folder.parents) if not p.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as e:
        reason = f"this folder cannot be made ({e.strerror}); name another"
        raise SheetError(f"{folder}: {reason}") from e
    try:
        with tempfile.TemporaryDirectory(prefix=".", dir=folder) as name:
            passing = Path(name)
            yield passing
            made = sorted(passing.iterdir())
            for sheet in (folder / p.name for p in made):
                if sheet.is_dir():
                    reason = _REASONS[errno.EISDIR]
                    raise SheetError(f"{sheet.name} was not written: {reason}.")
            for p in made:
                p.replace(folder / p.name)
    except BaseException as e:
        for p in above:  # made for nothing
            with suppress(OSError):
                p.rmdir()
        if isinstance(e, OSError):
            reason = _REASONS.get(e.errno or 0, "the disk refused it")
            raise SheetError(f"{folder}: nothing was written: {reason}.") from e
        raise


def _push(path: Path) -> None:
    """Have a file or a folder on the disk before going on."""
    handle = os.open(path, os.O_RDWR if path.is_file() else os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)

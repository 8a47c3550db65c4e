"""Files that are written whole or not at all.

A file is written beside its target under a passing name, pushed to the disk and
then renamed over the target, so that a reader never meets half a pattern.
"""

import errno
import os
import tempfile
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
    try:
        _write(target, data)
    except OSError as e:
        reason = _REASONS.get(e.errno or 0, "the disk refused it")
        raise SheetError(f"{target.name} was not written: {reason}.") from e


def _write(target: Path, data: bytes) -> None:
    if target.is_dir():
        raise IsADirectoryError(errno.EISDIR, "a folder")
    handle, passing = tempfile.mkstemp(prefix=".", suffix=".part", dir=target.parent)
    try:
        with os.fdopen(handle, "wb") as f:
            f.write(data)
            f.flush()
            os.fsync(f.fileno())
        Path(passing).chmod(0o644)
        Path(passing).replace(target)
    except BaseException:
        Path(passing).unlink(missing_ok=True)
        raise
    _settle(target.parent)


def _settle(folder: Path) -> None:
    """Push the rename itself to the disk, where the system knows how."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)

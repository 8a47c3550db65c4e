"""One search that goes on beside us, in a program of its own; see `aside`."""

import json
import subprocess
import sys
import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass

from clothwright.lay.byhand import Places
from clothwright.lay.pieces import Placed
from clothwright.order import Fold

PATIENCE = 5.0
"""A search that was told to stop is ended by force after this, s."""


@dataclass(frozen=True)
class Found:
    """The best lay so far, or the last word of a search."""

    fold: Fold
    placed: Places
    length: float
    share: float
    done: bool = False
    saving: str = ""
    others: tuple[tuple[Fold, float], ...] = ()


class Seeking:
    """A search for a short lay. `found` and `refused` are called from its own thread,
    `found` with each better lay and once with the last."""

    def __init__(
        self,
        text: str,
        place: str,
        house: str,
        cloth: str,
        fold: Fold | None,
        seconds: float,
        *,
        found: Callable[[Found], None],
        refused: Callable[[str], None],
    ) -> None:
        wish = {
            "text": text,
            "place": place,
            "house": house,
            "cloth": cloth,
            "fold": fold and fold.value,
            "seconds": seconds,
        }
        self._tell, self._say_no, self._heard = found, refused, True
        self._process = subprocess.Popen(
            [sys.executable, "-P", "-m", "clothwright.lay.aside"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            encoding="utf-8",
            start_new_session=True,
        )
        self._reader = threading.Thread(
            target=self._run, args=(json.dumps(wish),), daemon=True
        )
        self._reader.start()

    def stop(self) -> None:
        """End the search; the best lay comes as the last."""
        with suppress(OSError):
            if self._process.stdin is not None:
                self._process.stdin.close()
        timer = threading.Timer(PATIENCE, self._process.kill)
        timer.daemon = True
        timer.start()

    def end(self) -> None:
        """End it at once, and hear nothing more."""
        self._heard = False
        self._process.kill()

    def _found(self, found: Found) -> None:
        if self._heard:
            self._tell(found)

    def _refused(self, why: str) -> None:
        if self._heard:
            self._say_no(why)

    def _run(self, wish: str) -> None:
        stdin, stdout = self._process.stdin, self._process.stdout
        assert stdin is not None
        assert stdout is not None
        with suppress(OSError, ValueError):
            stdin.write(wish + "\n")
            stdin.flush()
        best: Found | None = None
        refused = ""
        with stdout:
            for line in stdout:
                if not line.endswith("\n"):
                    break  # it was ended in the middle of a word
                said = json.loads(line)
                if "refused" in said:
                    refused = str(said["refused"])
                else:
                    best = _read(said)
                    self._found(best)
        self._process.wait()
        with suppress(OSError, ValueError):
            stdin.close()
        if refused:
            self._refused(refused)
        elif best is None:
            self._refused("The search ended without a lay; try it again.")
        elif not best.done:  # it was ended by force
            self._found(Found(best.fold, best.placed, best.length, 1.0, done=True))


def _read(said: Mapping[str, object]) -> Found:
    placed, others = said["placed"], said.get("others", [])
    assert isinstance(placed, list)
    assert isinstance(others, list)
    return Found(
        Fold(said["fold"]),
        tuple(Placed(c, m, t, x, y) for c, m, t, x, y in placed),
        float(str(said["length"])),
        float(str(said.get("share", 1.0))),
        done=bool(said.get("done")),
        saving=str(said.get("saving", "")),
        others=tuple((Fold(f), float(n)) for f, n in others),
    )

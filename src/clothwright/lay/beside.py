"""A program that runs beside us and tells ever shorter lays, a line of JSON each."""

import json
import os
import subprocess
import threading
from collections.abc import Mapping, Sequence
from contextlib import suppress
from typing import cast


class Beside:
    """One such program; it goes on until it is done or stopped.

    It reads what it is `told` from standard input, which is closed only behind it: a
    program whose input ends has nobody left to tell, and ends too. A line is `[length,
    places, valid]`; what is not valid is a try in which a few pieces overlap.
    """

    def __init__(
        self,
        command: Sequence[str],
        told: bytes,
        env: Mapping[str, str] | None = None,
    ) -> None:
        self._line = self._near = b""
        self._process = subprocess.Popen(
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
            env=env,
        )
        self._reader = threading.Thread(target=self._run, args=(told,), daemon=True)
        self._reader.start()

    def _run(self, told: bytes) -> None:
        stdin, stdout = self._process.stdin, self._process.stdout
        assert stdin is not None
        assert stdout is not None
        with suppress(OSError):
            stdin.write(told)
            stdin.flush()
        with stdout:
            for line in stdout:
                if line.endswith(b"true]\n"):
                    self._line = line
                elif line.endswith(b"\n"):
                    self._near = line
        self._process.wait()
        with suppress(OSError):
            stdin.close()

    @property
    def done(self) -> bool:
        """True when it has nothing more to say."""
        return not self._reader.is_alive()

    def stop(self) -> None:
        """End it at once; what it has found stays."""
        self._process.kill()
        self._reader.join(2.0)

    @property
    def length(self) -> float:
        """Length of its shortest lay so far; infinite without one."""
        return float(json.loads(self._line)[0]) if self._line else float("inf")

    def last(self) -> list[object]:
        """The places in that lay; empty without one."""
        return _places(self._line)

    def last_try(self) -> list[object]:
        """The places in what it last tried shorter still; empty when it has tried
        nothing since this was asked."""
        line, self._near = self._near, b""
        return _places(line)


def end_with_input() -> None:
    """In such a program: end at once when nobody is there to be told."""
    while os.read(0, 1024):
        pass
    os._exit(0)


def _places(line: bytes) -> list[object]:
    return cast(list[object], json.loads(line)[1]) if line else []

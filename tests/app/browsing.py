"""A real browser at a served book; a line in between that can be cut."""

import contextlib
import os
import shutil
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

CHROMIUM = shutil.which("chromium") or "/usr/bin/chromium"
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@contextlib.contextmanager
def served(book: Path) -> Iterator[str]:
    """The app on a free port, as a user starts it; its address."""
    command = [sys.executable, "-c", "from clothwright.cli import main; main()"]
    command += ["serve", "--book", str(book), "--port", "0"]
    with subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        env={**os.environ, "PYTHONUNBUFFERED": "1"},
    ) as running:
        assert running.stdout is not None
        line = running.stdout.readline()
        assert line.startswith("The workroom is at "), line
        try:
            yield line.removeprefix("The workroom is at ").strip().rstrip("/")
        finally:
            running.terminate()
            running.wait(10)


@contextlib.contextmanager
def browser() -> Iterator[Browser]:
    """Debian's chromium."""
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        try:
            yield opened
        finally:
            opened.close()


@dataclass
class Line:
    """A plain TCP line to a port, which can be cut and joined again."""

    to: int
    whole: bool = True
    pairs: list[tuple[socket.socket, socket.socket]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.door = socket.create_server(("127.0.0.1", 0))
        self.port: int = self.door.getsockname()[1]
        threading.Thread(target=self._open, daemon=True).start()

    def _open(self) -> None:
        while True:
            try:
                near, _ = self.door.accept()
            except OSError:
                return
            if not self.whole:
                near.close()
                continue
            far = socket.create_connection(("127.0.0.1", self.to))
            self.pairs.append((near, far))
            for a, b in ((near, far), (far, near)):
                threading.Thread(target=_carry, args=(a, b), daemon=True).start()

    def cut(self) -> None:
        """Cut every connection, and refuse new ones."""
        self.whole = False
        for pair in self.pairs:
            for end in pair:
                with contextlib.suppress(OSError):
                    end.shutdown(socket.SHUT_RDWR)
                end.close()
        self.pairs.clear()

    def join(self) -> None:
        """Let new connections through again."""
        self.whole = True


def _carry(a: socket.socket, b: socket.socket) -> None:
    with contextlib.suppress(OSError):
        while data := a.recv(65536):
            b.sendall(data)
    for end in (a, b):
        with contextlib.suppress(OSError):
            end.shutdown(socket.SHUT_RDWR)


def watched(page: Page) -> list[str]:
    """What goes wrong on a page: faults of its scripts, and requests elsewhere."""
    wrong: list[str] = []
    page.on("pageerror", lambda e: wrong.append(f"script: {e}"))
    page.on(
        "console",
        lambda m: wrong.append(f"console: {m.text}") if m.type == "error" else None,
    )
    page.on(
        "request",
        lambda r: (
            None
            if r.url.startswith(
                ("http://127.0.0.1:", "ws://127.0.0.1:", "data:", "blob:")
            )
            else wrong.append(f"elsewhere: {r.url}")
        ),
    )
    return wrong

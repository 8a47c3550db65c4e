"""A real browser at a served book; a line in between that can be cut."""

import contextlib
import shutil
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

CHROMIUM = shutil.which("chromium") or "/usr/bin/chromium"
PATIENCE = 90.0
"""Longest wait for anything to come about, on a machine that is busy with others, s."""

expect.set_options(timeout=PATIENCE * 1000)

QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


IN_BROWSER = [
    pytest.mark.skipif(
        not Path(CHROMIUM).exists(),
        reason="no browser here; install Debian's package chromium",
    ),
    pytest.mark.xdist_group("browser"),
]
"""Marks of a module that opens a real browser."""


@dataclass(frozen=True)
class Served:
    """A served book: where it is, its process, and what it has said."""

    address: str
    pid: int
    log: Path


@contextlib.contextmanager
def serving(book: Path, *more: str) -> Iterator[Served]:
    """The app on a free port, as a user starts it, with more options."""
    command = [sys.executable, "-c", "from clothwright.cli import main; main()"]
    command += ["serve", "--book", str(book), "--port", "0", *more]
    log = book.with_suffix(".log")
    with (
        log.open("w") as out,
        subprocess.Popen(command, stdout=out, stderr=subprocess.STDOUT) as running,
    ):
        try:
            yield Served(_address(log, running), running.pid, log)
        finally:
            running.terminate()
            running.wait(PATIENCE)


@contextlib.contextmanager
def served(book: Path) -> Iterator[str]:
    """The app on a free port; its address. It must say nothing but where it is: a
    traceback in its log fails the test that served it."""
    with serving(book) as at:
        yield at.address
    said = at.log.read_text()
    assert len(said.splitlines()) == 2, said


def _address(log: Path, running: subprocess.Popen[bytes]) -> str:
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        line = log.read_text().partition("\n")[0]
        if line.startswith("The workroom is at ") and running.poll() is None:
            return line.removeprefix("The workroom is at ").strip().rstrip("/")
        time.sleep(0.05)
    raise AssertionError(f"the app did not start: {log.read_text()}")


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

    def close(self) -> None:
        """Take the line away."""
        with contextlib.suppress(OSError):
            self.door.shutdown(socket.SHUT_RDWR)
        self.door.close()
        self.cut()


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


def new_slip(page: Page, home: str) -> str:
    """A slip of the made-up client, open; its address."""
    page.goto(home)
    page.get_by_role("button", name="try it with a made-up client").click()
    page.wait_for_selector("[data-code=FC]", state="attached")
    expect(page.locator("#edge-live")).to_contain_text("seams meet")
    return page.url


def painted(page: Page) -> None:
    """Wait until what moves has come to rest, and is painted."""
    page.evaluate(
        """async () => {
          const frame = () => new Promise((done) => requestAnimationFrame(done));
          await frame();
          const ends = (a) => a.effect.getComputedTiming().endTime < Infinity;
          const moving = document.getAnimations().filter(ends);
          await Promise.all(moving.map((a) => a.finished.catch(() => null)));
          await frame();
          await frame();
        }"""
    )


def word(page: Page, of: str) -> str:
    return page.locator(f"[data-of='{of}']").first.inner_text()


def settled(page: Page, text: str) -> None:
    """Wait until the table's line says so."""
    expect(page.locator("#edge-live")).to_contain_text(text)


def outline(page: Page, code: str) -> str:
    found = page.locator(f"[data-code={code}] .cutout").get_attribute("d")
    assert found
    return found


def failing_slip(page: Page, home: str) -> None:
    """A slip with things to mend: at a shoulder, at the open back, behind."""
    new_slip(page, home)
    for of, to in (
        ("sleeveless armhole.narrowed", "1 1/2"),
        ("low open back.top", "0"),
        ("panel behind.overlap", "1 7/8"),
    ):
        page.evaluate(
            "([of, to]) => room.change({do: 'set', of, to, unit: 'in'})", [of, to]
        )
    settled(page, "to mend")

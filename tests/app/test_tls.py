"""The app behind an encrypted line, with a certificate made for the test."""

import http.client
import json
import shutil
import socket
import ssl
import subprocess
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import expect
from typer.testing import CliRunner
from websockets.sync.client import connect
from websockets.typing import Origin

from clothwright.cli import app

from .browsing import CHROMIUM, Served, browser, serving

OPENSSL = shutil.which("openssl") or ""

pytestmark = [
    pytest.mark.skipif(not OPENSSL, reason="no openssl here"),
    pytest.mark.xdist_group("browser"),
]


def made(folder: Path, name: str, *more: str) -> tuple[Path, Path]:
    """A certificate of this machine's own, and its key."""
    certificate, key = folder / f"{name}.pem", folder / f"{name}-key.pem"
    subprocess.run(
        [
            *(OPENSSL, "req", "-x509", "-newkey", "rsa:2048", "-days", "2"),
            *("-subj", "/CN=localhost", "-keyout", str(key), "-out", str(certificate)),
            *("-addext", "subjectAltName=DNS:localhost,IP:127.0.0.1"),
            *(more or ("-nodes",)),
        ],
        check=True,
        capture_output=True,
    )
    return certificate, key


@pytest.fixture(scope="module")
def pair(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    return made(tmp_path_factory.mktemp("pair"), "own")


@pytest.fixture(scope="module")
def at(
    pair: tuple[Path, Path], tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Served]:
    book = tmp_path_factory.mktemp("book") / "book.db"
    files = ("--certificate", str(pair[0]), "--key", str(pair[1]))
    with serving(book, *files) as running:
        yield running
    assert "Traceback" not in running.log.read_text()


def test_pages_and_the_socket_come_over_an_encrypted_line(
    at: Served, pair: tuple[Path, Path]
) -> None:
    where = urlsplit(at.address)
    assert where.scheme == "https"
    trusted = ssl.create_default_context(cafile=str(pair[0]))
    line = http.client.HTTPSConnection("127.0.0.1", where.port, context=trusted)
    line.request("POST", "/made-up", headers={"origin": at.address})
    answer = line.getresponse()
    assert answer.status == 303 and answer.read() == b""
    line.request("GET", "/slips/1")
    assert b"Brida Hollin" in line.getresponse().read()
    line.close()
    table = f"wss://127.0.0.1:{where.port}/slips/1/table"
    with connect(table, ssl=trusted, origin=Origin(at.address)) as page:
        assert json.loads(page.recv(timeout=20))["is"] == "paper"


def test_a_plain_line_and_noise_get_nothing(at: Served) -> None:
    port = urlsplit(at.address).port
    for noise in (
        b"GET / HTTP/1.1\r\nhost: 127.0.0.1\r\n\r\n",
        b"\x16\x03\x01\x00",
        b"x",
    ):
        with socket.create_connection(("127.0.0.1", port), 5) as line:
            line.sendall(noise)
            line.shutdown(socket.SHUT_WR)
            heard = b""
            while part := line.recv(4096):
                heard += part
            assert b"Clothwright" not in heard and b"HTTP/1.1 200" not in heard


@pytest.mark.skipif(not Path(CHROMIUM).exists(), reason="no browser here")
def test_a_browser_that_was_told_to_trust_it_opens_a_slip(at: Served) -> None:
    with browser() as chromium:
        page = chromium.new_page(ignore_https_errors=True)
        page.goto(at.address)
        page.get_by_role("button", name="try it with a made-up client").click()
        expect(page.locator("#edge-live")).to_contain_text("seams meet", timeout=20000)


def refused(*words: str | Path) -> str:
    """What `serve` says when it does not start; nothing stands in its book's place."""
    done = CliRunner().invoke(app, ["serve", "--port", "0", *map(str, words)])
    assert done.exit_code == 5 and not done.stdout
    assert len(done.stderr.splitlines()) == 1
    return done.stderr


def test_files_that_do_not_fit_are_one_sentence(
    tmp_path: Path, pair: tuple[Path, Path]
) -> None:
    certificate, key = pair
    book = ("--book", tmp_path / "book.db")
    words, other = tmp_path / "words.pem", made(tmp_path, "other")
    words.write_text("Not for others.")
    cut = tmp_path / "cut.pem"
    cut.write_text(certificate.read_text()[:300])
    _, locked = made(tmp_path, "locked", "-passout", "pass:needle")
    for files, says in (
        (("--certificate", certificate), "go together; name both"),
        (("--certificate", tmp_path / "no.pem", "--key", key), "there is no such file"),
        (("--certificate", tmp_path, "--key", key), "cannot be read"),
        (("--certificate", words, "--key", key), "is no PEM file"),
        (("--certificate", certificate, "--key", other[1]), "do not belong together"),
        (("--certificate", cut, "--key", key), "do not belong together"),
        (("--certificate", key, "--key", certificate), "do not belong together"),
        (("--certificate", certificate, "--key", locked), "locked with a password"),
    ):
        assert says in refused(*book, *files), files
    assert not (tmp_path / "book.db").exists()


def test_over_an_encrypted_line_the_cookie_stays_there(
    tmp_path: Path, pair: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CLOTHWRIGHT_PASSWORD", "needle and thread")
    files = ("--certificate", str(pair[0]), "--key", str(pair[1]))
    with serving(tmp_path / "book.db", "--host", "0.0.0.0", *files) as at:
        where = urlsplit(at.address)
        trusted = ssl.create_default_context(cafile=str(pair[0]))
        line = http.client.HTTPSConnection("127.0.0.1", where.port, context=trusted)
        origin = f"https://127.0.0.1:{where.port}"
        form = {"content-type": "application/x-www-form-urlencoded", "origin": origin}
        line.request("POST", "/door", "password=needle+and+thread", form)
        cookie = line.getresponse().headers["set-cookie"]
        line.close()
        assert "; Secure" in cookie and "HttpOnly" in cookie
    assert "unhidden" not in at.log.read_text()

"""10,000 random HTTP messages at the served app, on bare sockets.

No traceback in its log, no wedged server, memory flat, and a sentence for every fault.
Most messages are nonsense of some kind; a few are real, so that nothing is tested
against an empty book. The pace of one address is limited, so many are used: all of
127.0.0.0/8 is this machine.
"""

import asyncio
import json
import random
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import quote, urlencode, urlsplit

from .browsing import Served, serving

MESSAGES = 10_000
AT_ONCE = 16
LIMIT = 20.0
"""Longest wait for an answer, s."""

GROWTH = 24_000
"""More memory that may be in use after the last than after the first 4,000, kB."""

PATHS = (
    *("/", "/cards", "/shelf", "/door", "/leave", "/slips", "/made-up", "/nothing"),
    *("/slips/1", "/slips/1/past", "/slips/1/head", "/slips/1/notes"),
    *("/slips/1/photos", "/slips/1/table", "/slips/0", "/slips/-1", "/slips/99"),
    *("/slips/99999999999999999999", "/slips/1e3", "/slips/²", "/slips/1/table?unit="),
    *("/cards/1", "/cards/1/measures", "/cards/1/notes", "/cards/1/photos"),
    *("/cards/1/name", "/cards/1/forget", "/cards/9223372036854775808"),
    *("/shelf/house", "/shelf/restore", "/shelf/import", "/photos/1"),
    *(
        "/forget/note/1",
        "/forget/cape/1",
        "/forget/slip/7",
        "/shelf/export?client=²",
        "/shelf/export?client=99",
    ),
    *("/slips/1/sheets/cape.pdf", "/slips/1/sheets/pattern.svg?scale=vast"),
    *("/static/../guard.py", "/static/0/..%2f..%2fguard.py", "//", "/%00", "/%ff%fe"),
)
METHODS = ("GET", "POST", "HEAD", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW")
FIELDS = (
    *("name", "text", "client", "style", "title", "wanted", "state", "W", "B", "unit"),
    *("taken", "by", "note", "keep W", "revision", "back", "caption", "password"),
    *("photo", "file", "handed_over", "measure", ""),
)
VALUES = (
    *("", "1", "-1", "²", "1e400", "NaN", "36 1/2", "peplum-top", "in", "cm", "yes"),
    *("2027-06-14", "0000-00-00", "99999999999999999999", "\0", "a\nb", "…" * 300),
    *(
        "<b>",
        "'; --",
        "//evil.example/",
        "/cards",
        "🪡" * 50,
        "\ud800".encode("utf-8", "surrogatepass").decode("latin-1"),
    ),
)
TYPES = (
    *("application/x-www-form-urlencoded", "application/json", "text/plain", "", "/"),
    "application/x-www-form-urlencoded; charset=klingon",
    "multipart/form-data",
    "multipart/form-data; boundary=" + "x" * 300,
    "multipart/form-data; boundary=seam; charset=utf-99",
)


@dataclass
class Flood:
    """Random messages, and what became of them."""

    host: str
    chance: random.Random = field(default_factory=lambda: random.Random(7))
    codes: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)
    broken: bool = False
    """Whether the last message may leave the app waiting for more of it."""

    def message(self) -> bytes:
        """One message; about half are refused before they come to a page."""
        pick = self.chance.random()
        if pick < 0.12:
            return self._noise()
        path, method = self.chance.choice(PATHS), self.chance.choice(METHODS)
        if pick < 0.7:
            method = self.chance.choice(("GET", "POST"))
        head = {"host": self.host, "origin": f"http://{self.host}"}
        if self.chance.random() < 0.25:
            head["host"] = self.chance.choice(
                ("evil.example", "", "[", "[::1", "127.0.0.1:x", "é", self.host + "9")
            )
        if self.chance.random() < 0.25:
            head["origin"] = self.chance.choice(
                ("", "null", "http://[", "http://evil.example", "//" + self.host, "é")
            )
        if self.chance.random() < 0.2:
            head["cookie"] = self.chance.choice(
                (
                    "clothwright=in.AAAA.BBBB",
                    ";;;==",
                    "clothwright=" + "x" * 3000,
                    "é=\\",
                )
            )
        if self.chance.random() < 0.1:
            head[f"x-{self.chance.randrange(99)}"] = "y" * self.chance.randrange(9000)
        self.broken = False
        kind, body = self._body() if method not in ("GET", "HEAD") else ("", b"")
        if kind:
            head["content-type"] = kind
        length = str(len(body))
        if self.chance.random() < 0.1:
            length = self.chance.choice(
                ("-1", "abc", "99999999999999", "1e3", "", "0", str(len(body) + 7))
            )
            self.broken = True
        if self.chance.random() < 0.05:
            head["transfer-encoding"] = "chunked"
            body = b"%x\r\n%b\r\n0\r\n\r\n" % (len(body), body) if body else b"zz\r\n"
            self.broken = True
        elif body or method == "POST":
            head["content-length"] = length
        if self.chance.random() < 0.03:
            head |= {"connection": "upgrade", "upgrade": "websocket"}
            head |= {"sec-websocket-version": "13", "sec-websocket-key": "AA=="}
            self.broken = True
        else:
            head["connection"] = "close"
        if not path.isascii():
            path = quote(path, safe="/?=")
        if self.chance.random() < 0.1:
            path += self.chance.choice(
                ("?", "?a=%ff", "/..", "?" + "q" * 5000, "#", ";")
            )
        lines = "".join(f"{k}: {v}\r\n" for k, v in head.items())
        return f"{method} {path} HTTP/1.1\r\n{lines}\r\n".encode("latin-1") + body

    def _noise(self) -> bytes:
        """Bytes that are no message, or the beginning of one."""
        self.broken = True
        if self.chance.random() < 0.5:
            return self.chance.randbytes(self.chance.randrange(1, 400))
        return self.chance.choice(
            (
                b"GET / HTTP/9.9\r\n\r\n",
                b"GET /\r\n\r\n",
                b"GET / HTTP/1.1\r\nhost",
                b"POST /cards HTTP/1.1\r\nhost: x\r\ncontent-length: 50\r\n\r\nname=",
                b"GET /" + b"a" * 70_000 + b" HTTP/1.1\r\n\r\n",
                b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03",  # TLS begins so
                b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
                b"\r\n" * 50,
            )
        )

    def _body(self) -> tuple[str, bytes]:
        form = {
            self.chance.choice(FIELDS): self.chance.choice(VALUES)
            for _ in range(self.chance.randrange(6))
        }
        pick = self.chance.random()
        if pick < 0.35:
            return TYPES[0], urlencode(form).encode()
        if pick < 0.5:
            return self.chance.choice(TYPES), self.chance.randbytes(300)
        if pick < 0.6:
            return TYPES[0], b"name=%ff%fe&text=%zz&" + b"&".join([b"a=b"] * 2000)
        if pick < 0.62:
            return TYPES[0], b"text=" + b"x" * 400_000
        if pick < 0.7:
            return "application/json", json.dumps(form).encode()
        parts = b""
        for name, value in form.items():
            file = self.chance.choice(
                (b"", b'; filename="a.png"', b'; filename="\xff"')
            )
            part = self.chance.choice(
                (
                    value.encode(),
                    b"\x89PNG\r\n\x1a\n" + self.chance.randbytes(60),
                    b"PK",
                )
            )
            parts += (
                b'--seam\r\ncontent-disposition: form-data; name="%b"%b\r\n\r\n'
                % (
                    name.encode(),
                    file,
                )
            )
            parts += part + b"\r\n"
        end = self.chance.choice((b"--seam--\r\n", b"--seam", b""))
        return "multipart/form-data; boundary=seam", parts + end

    async def send(self, n: int, port: int) -> None:
        """One message from an address of its own, and its answer."""
        message, broken = self.message(), self.broken
        here = (f"127.0.{1 + n % 50}.1", 0)
        reader, writer = await asyncio.open_connection(
            "127.0.0.1", port, local_addr=here
        )
        answer = b""
        try:
            writer.write(message)
            if broken:
                writer.write_eof()
            async with asyncio.timeout(LIMIT):
                answer = await reader.read(400)
                while await reader.read(1 << 16):
                    pass
        except TimeoutError:
            self.wrong.append(f"no end of the answer to {message[:200]!r}")
        except OSError:
            pass  # it hung up on nonsense
        finally:
            writer.close()
        code = answer[9:12].decode("latin-1")
        self.codes[code] += 1
        if code.startswith("5"):
            self.wrong.append(f"{code} to {message[:300]!r}")


def memory(at: Served) -> int:
    """What a process has in use, kB."""
    status = Path(f"/proc/{at.pid}/status").read_text()
    return int(status.partition("VmRSS:")[2].split()[0])


async def flood(at: Served) -> Flood:
    """All of them, a few at once; the memory is looked at on the way and at the end."""
    where = urlsplit(at.address)
    run = Flood(where.netloc)
    numbers = iter(range(MESSAGES))
    used = []

    async def worker() -> None:
        for n in numbers:
            if n == 4_000:
                used.append(memory(at))
            await run.send(n, where.port or 0)

    await asyncio.gather(*(worker() for _ in range(AT_ONCE)))
    used.append(memory(at))
    if used[1] - used[0] > GROWTH:
        run.wrong.append(f"memory grew from {used[0]} kB to {used[1]} kB")
    run.codes["kB more"] = used[1] - used[0]
    return run


async def answers(at: Served, path: str) -> bytes:
    """The first line of the answer to a plain request."""
    where = urlsplit(at.address)
    reader, writer = await asyncio.open_connection("127.0.0.1", where.port or 0)
    writer.write(f"GET {path} HTTP/1.1\r\nhost: {where.netloc}\r\n\r\n".encode())
    async with asyncio.timeout(5):
        line = await reader.readline()
    writer.close()
    return line


def test_ten_thousand_messages_leave_it_whole(tmp_path: Path) -> None:
    with serving(tmp_path / "book.db") as at:
        run = asyncio.run(flood(at))
        assert not run.wrong, "\n".join(run.wrong)
        assert run.codes["200"] + run.codes["303"] > 300  # some came through
        for path in ("/", "/cards", "/shelf"):
            assert asyncio.run(answers(at, path)) == b"HTTP/1.1 200 OK\r\n"
    said = at.log.read_text().splitlines()[2:]
    assert {s.strip() for s in said} <= {"WARNING:  Invalid HTTP request received."}

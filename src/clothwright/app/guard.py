"""What stands between the network and the app: hosts, origins, passwords, headers.

Plain ASGI, for requests and sockets alike. On the loopback address anyone at this
machine may use the book; beyond it a password is asked for, kept as a scrypt hash, and
a signed cookie remembers it.
"""

import asyncio
import hashlib
import hmac
import secrets
import time
from collections import deque
from collections.abc import Awaitable, Callable, Iterable, MutableMapping
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie
from typing import Any
from urllib.parse import urlsplit

from itsdangerous import BadSignature, TimestampSigner

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

LOOPBACK = ("127.0.0.1", "localhost", "[::1]", "::1")
COOKIE = "clothwright"
STAY = 30 * 24 * 3600
"""A log-in is remembered this long, s."""

BODY = 12_000_000
"""Bytes of one request; a photo is the largest thing that is sent."""

PATIENCE = 30.0
"""Longest wait for the next part of a request, s."""

TRIES, WINDOW = 5, 60.0
"""Log-ins that may fail from one address in so many seconds."""

PACE, BURST = 400, 10.0
"""Requests of one address in so many seconds."""

HEADERS = (
    (
        b"content-security-policy",
        b"default-src 'self'; img-src 'self' data: blob:; object-src 'none'; "
        b"base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
    ),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
)


def hashed(password: str) -> str:
    """A password as it may be kept: salt and scrypt hash."""
    salt = secrets.token_bytes(16)
    return f"{salt.hex()}:{_scrypt(password, salt).hex()}"


def matches(password: str, kept: str) -> bool:
    """Whether a password is the one that was hashed."""
    salt, _, digest = kept.partition(":")
    return hmac.compare_digest(
        _scrypt(password, bytes.fromhex(salt)), bytes.fromhex(digest)
    )


def _scrypt(password: str, salt: bytes) -> bytes:
    return hashlib.scrypt(password.encode(), salt=salt, n=2**15, r=8, p=1, maxmem=2**26)


@dataclass
class Counter:
    """How often something came from an address lately."""

    limit: int
    window: float
    seen: dict[str, deque[float]] = field(default_factory=dict)

    def full(self, who: str) -> bool:
        """Whether an address has used up its share."""
        now = time.monotonic()
        times = self.seen.get(who)
        while times and now - times[0] > self.window:
            times.popleft()
        if times is not None and not times:
            del self.seen[who]
        return times is not None and len(times) >= self.limit

    def count(self, who: str) -> None:
        """Once more from this address."""
        if len(self.seen) > 10_000:
            self.seen.clear()
        self.seen.setdefault(who, deque()).append(time.monotonic())


class Guard:
    """Refuses foreign hosts and origins, floods, and those who are not logged in."""

    def __init__(
        self,
        app: App,
        *,
        hosts: Iterable[str] = LOOPBACK,
        password: str = "",
        secret: str = "",
        secure: bool = False,
    ) -> None:
        """`password` is a hash (see `hashed`) or empty; `secure` is for TLS only."""
        self.app = app
        self.hosts = {h.lower() for h in hosts}
        self.password = password
        self.signer = TimestampSigner(secret or secrets.token_hex(32))
        self.secure = secure
        self.failed = Counter(TRIES, WINDOW)
        self.asked = Counter(PACE, BURST)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        refused = self._refused(scope)
        if refused is not None:
            await _refuse(scope, receive, send, *refused)
            return
        scope.setdefault("state", {})["guard"] = self
        if scope["type"] == "websocket":
            await self.app(scope, receive, send)
            return
        exchange = _Exchange(receive, send)
        try:
            await self.app(scope, exchange.receive, exchange.send)
        except asyncio.CancelledError:  # the workroom closes while a sheet is drawn
            if not exchange.begun:
                await _refuse(scope, receive, send, 503, "The workroom is closed.")

    def _refused(self, scope: Scope) -> tuple[int, str] | None:
        headers = {
            k.decode("latin-1").lower(): v.decode("latin-1")
            for k, v in scope["headers"]
        }
        who = (scope.get("client") or ("?", 0))[0]
        host = headers.get("host", "")
        if _name(host) not in self.hosts:
            return 421, "This address is not one of the workroom's."
        if self.asked.full(who):
            return 429, "Too much at once; wait a few seconds."
        self.asked.count(who)
        safe = scope["type"] == "http" and scope["method"] in ("GET", "HEAD")
        if not safe and _netloc(headers.get("origin", "")) != host.lower():
            return 403, "Only the workroom's own pages may change the book."
        if int(headers.get("content-length", "0") or 0) > BODY:
            return 413, "That is too large; a photo may have 10 MB."
        path = scope["path"]
        open_to_all = path == "/door" or path.startswith("/static/")
        if self.password and not open_to_all:
            return None if self.knows(headers.get("cookie", "")) else (401, "")
        return None

    def knows(self, cookie: str) -> bool:
        """Whether a cookie is one that was given here and is not too old."""
        try:
            value = SimpleCookie(cookie)[COOKIE].value
            self.signer.unsign(value, max_age=STAY)
        except (KeyError, CookieError, BadSignature):
            return False
        return True

    def log_in(self, who: str, password: str) -> str | None:
        """The cookie for the right password; None for a wrong one. Raises ValueError
        when this address has tried too often."""
        if self.failed.full(who):
            raise ValueError("Too many tries; wait a minute.")
        if not self.password or not matches(password, self.password):
            self.failed.count(who)
            return None
        value = self.signer.sign("in").decode()
        secure = "; Secure" if self.secure else ""
        return (
            f"{COOKIE}={value}; Path=/; Max-Age={STAY}; HttpOnly; SameSite=Strict"
            + secure
        )


def _netloc(origin: str) -> str:
    """Host and port of an origin; empty when it is none."""
    try:
        return urlsplit(origin).netloc.lower()
    except ValueError:
        return ""


def _name(host: str) -> str:
    """A host without its port."""
    host = host.lower()
    if host.startswith("["):
        return host.partition("]")[0] + "]"
    return host.partition(":")[0]


class _Exchange:
    """One request and its answer: a body without a stated length may not be endless
    nor be waited for without end, and nothing more is said to one who has hung up."""

    def __init__(self, receive: Receive, send: Send) -> None:
        self._receive, self._send = receive, send
        self._got = 0
        self._more = True
        self._gone = False
        self.begun = False

    async def receive(self) -> Message:
        """The next part; a hang-up when it is too much or does not come."""
        try:
            async with asyncio.timeout(PATIENCE if self._more else None):
                message = await self._receive()
        except TimeoutError:
            message = {"type": "http.disconnect"}
        self._more = bool(message.get("more_body"))
        self._got += len(message.get("body", b""))
        self._gone = message["type"] == "http.disconnect"
        return {"type": "http.disconnect"} if self._got > BODY else message

    async def send(self, message: Message) -> None:
        """A part of the answer, with the headers that stand on every one."""
        if self._gone:
            return
        if message["type"] == "http.response.start":
            self.begun = True
            message = {**message, "headers": [*message["headers"], *HEADERS]}
        await self._send(message)


async def _refuse(
    scope: Scope, receive: Receive, send: Send, code: int, why: str
) -> None:
    if scope["type"] == "websocket":
        await receive()
        await send(
            {"type": "websocket.close", "code": 4000 + code % 1000, "reason": ""}
        )
        return
    headers = [(b"content-type", b"text/plain; charset=utf-8"), *HEADERS]
    body = why.encode()
    if code == 401:
        wants_page = scope["method"] == "GET"
        code, body = (303, b"") if wants_page else (401, b"Log in first.")
        headers.append((b"location", b"/door"))
    await send({"type": "http.response.start", "status": code, "headers": headers})
    await send({"type": "http.response.body", "body": body})

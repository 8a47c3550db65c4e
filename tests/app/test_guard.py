"""What stands between the network and the book."""

import asyncio

import pytest
from starlette.testclient import TestClient
from starlette.websockets import WebSocketDisconnect

from clothwright.app.guard import (
    COOKIE,
    Counter,
    Guard,
    Message,
    Receive,
    Scope,
    Send,
    hashed,
    matches,
)
from clothwright.app.server import create_app
from clothwright.book import Book

from .conftest import HOME


def test_only_the_workrooms_own_hosts_are_answered(page: TestClient) -> None:
    assert page.get("/").status_code == 200
    for host in ("evil.example", "127.0.0.1.evil.example", "", "localhost.evil"):
        assert page.get("/", headers={"host": host}).status_code == 421


@pytest.mark.parametrize(
    "origin", ["", "null", "http://evil.example", "http://127.0.0.1:9", "http://["]
)
def test_other_pages_change_nothing(page: TestClient, book: Book, origin: str) -> None:
    headers = {"origin": origin}
    assert page.post("/made-up", headers=headers).status_code == 403
    assert not book.slips.all()


def test_other_pages_open_no_socket(page: TestClient) -> None:
    page.post("/made-up")
    with (
        pytest.raises(WebSocketDisconnect),
        page.websocket_connect(
            "ws://127.0.0.1/slips/1/table", headers={"origin": "http://evil.example"}
        ) as socket,
    ):
        socket.receive_text()
    with page.websocket_connect(
        "ws://127.0.0.1/slips/1/table", headers={"origin": HOME}
    ) as socket:
        assert socket.receive_json()["is"] == "paper"


def test_every_page_is_strict_about_what_it_loads(page: TestClient) -> None:
    page.post("/made-up")
    for path in ("/", "/slips/1", "/cards/1", "/shelf", "/nothing", "/slips/99"):
        answer = page.get(path)
        policy = answer.headers["content-security-policy"]
        assert "default-src 'self'" in policy and "unsafe" not in policy
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert "http://" not in answer.text.replace(HOME, "").replace(
            "http://www.w3.org/2000/svg", ""
        )
        assert "<script>" not in answer.text and " style=" not in answer.text


def test_names_are_text_and_never_markup(page: TestClient, book: Book) -> None:
    page.post("/cards", data={"name": "<img src=x onerror=alert(1)>"})
    for path in ("/cards", "/cards/1", "/"):
        assert "<img src=x" not in page.get(path).text


def test_beyond_this_machine_a_password_is_asked_for(book: Book) -> None:
    app = create_app(book, password=hashed("needle and thread"), secret="s" * 32)
    with TestClient(app, HOME, headers={"origin": HOME}) as page:
        answer = page.get("/", follow_redirects=False)
        assert answer.status_code == 303 and answer.headers["location"] == "/door"
        assert page.post("/made-up").status_code == 401
        with (
            pytest.raises(WebSocketDisconnect),
            page.websocket_connect(
                "ws://127.0.0.1/slips/1/table", headers={"origin": HOME}
            ),
        ):
            pass
        assert page.post("/door", data={"password": "wrong"}).status_code == 403
        answer = page.post(
            "/door", data={"password": "needle and thread"}, follow_redirects=False
        )
        cookie = answer.headers["set-cookie"]
        assert "HttpOnly" in cookie and "SameSite=Strict" in cookie
        assert page.get("/").status_code == 200
        page.cookies.clear()
        page.cookies.set(COOKIE, "in.AAAA.BBBB")
        assert page.get("/", follow_redirects=False).status_code == 303


def test_log_in_is_slowed_down(book: Book) -> None:
    app = create_app(book, password=hashed("needle and thread"))
    with TestClient(app, HOME, headers={"origin": HOME}) as page:
        codes = [
            page.post("/door", data={"password": f"guess {i}"}).status_code
            for i in range(7)
        ]
        assert codes == [403] * 5 + [429] * 2
        right = page.post("/door", data={"password": "needle and thread"})
        assert right.status_code == 429


def test_what_is_too_large_is_refused(page: TestClient) -> None:
    page.post("/made-up")
    answer = page.post("/cards/1/notes", content=b"x" * 13_000_000)
    assert answer.status_code == 413


def test_a_flood_is_slowed_down(page: TestClient) -> None:
    """However slowly this machine sends it."""
    guard = page.app
    assert isinstance(guard, Guard)
    assert guard.asked.window == 10.0
    guard.asked.window = 600.0
    codes = [page.get("/door").status_code for _ in range(420)]
    assert codes[0] == 200 and codes[-1] == 429


def test_a_kept_password_is_salted() -> None:
    a, b = hashed("needle"), hashed("needle")
    assert a != b and matches("needle", a) and not matches("Needle", b)


def test_counters_forget_in_time() -> None:
    counter = Counter(2, 0.0)
    for _ in range(5):
        counter.count("a")
    assert not counter.full("a") and "a" not in counter.seen


@pytest.mark.parametrize(
    ("method", "path", "code"),
    [
        ("PUT", "/cards", 405),
        ("POST", "/slips", 400),
        ("GET", "/slips/nine", 400),
        ("GET", "/shelf/export?client=²", 400),
        ("POST", "/made-up?style=cape", 400),
        ("GET", "/slips/99999999999999999999", 400),
    ],
)
def test_what_no_page_sends_is_answered_with_a_sentence(
    page: TestClient, method: str, path: str, code: int
) -> None:
    answer = page.request(method, path, data={"style": "cape"} if "?" in path else None)
    assert answer.status_code == code
    assert "That was not done" in answer.text and "detail" not in answer.text


def test_a_body_that_does_not_come_is_not_waited_for(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("clothwright.app.guard.PATIENCE", 0.05)
    sent: list[Message] = []

    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        while (await receive())["type"] != "http.disconnect":
            pass
        await send({"type": "http.response.start", "status": 200, "headers": []})

    async def receive() -> Message:
        await asyncio.sleep(0 if not sent else 60)
        sent.append({"type": "http.request", "body": b"a", "more_body": True})
        return sent[-1]

    async def send(message: Message) -> None:
        raise AssertionError("nothing is said to one who has hung up")

    scope: Scope = {
        "type": "http",
        "method": "GET",
        "path": "/",
        "headers": [(b"host", b"localhost")],
        "client": ("127.0.0.1", 1),
    }

    async def go() -> None:
        await asyncio.wait_for(Guard(app)(scope, receive, send), 5)

    asyncio.run(go())


def test_a_workroom_that_closes_while_a_sheet_is_drawn() -> None:
    """The server cancels what is still at work: an answer, and no fault."""
    sent: list[Message] = []

    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        await asyncio.sleep(60)

    async def receive() -> Message:
        return {"type": "http.request", "body": b""}

    async def send(message: Message) -> None:
        sent.append(message)

    scope: Scope = {
        "type": "http",
        "method": "GET",
        "path": "/slips/1/preview",
        "headers": [(b"host", b"localhost")],
        "client": ("127.0.0.1", 1),
    }

    async def go() -> None:
        work = asyncio.create_task(Guard(app)(scope, receive, send))
        await asyncio.sleep(0.05)
        work.cancel()
        await work

    asyncio.run(go())
    assert [m.get("status") for m in sent] == [503, None]
    assert sent[1]["body"] == b"The workroom is closed."

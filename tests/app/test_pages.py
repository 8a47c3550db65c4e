"""Pages without scripts: slips, cards, shelf, print, earlier states."""

import io
import zipfile
from typing import Any

import pypdfium2
import pytest
from starlette.testclient import TestClient, WebSocketTestSession
from starlette.websockets import WebSocketDisconnect

from books import picture
from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.workshop import new_slip
from clothwright.book import Book


@pytest.fixture
def tried(page: TestClient) -> TestClient:
    page.post("/made-up")
    return page


def test_an_empty_book_asks_whom_it_is_for(page: TestClient) -> None:
    text = page.get("/").text
    assert "Who is it for?" in text and "try it with a made-up client" in text


def test_from_a_new_client_to_a_slip(page: TestClient, book: Book) -> None:
    page.post("/cards", data={"name": "Thea Marsh"})
    figures = {"B": "92", "W": "74", "H": "98", "HT": "168", "NWB": "41.5"}
    answer = page.post("/cards/1/measures", data={**figures, "unit": "cm"})
    assert answer.status_code == 200
    assert "B 92" not in answer.text and ">92<" in answer.text
    form = {"client": "1", "style": "peplum-top", "wanted": "2027-06-14"}
    answer = page.post("/slips", data=form)
    assert answer.url.path == "/slips/1"
    assert "Monday 14 June 2027" in page.get("/").text
    assert book.slips.numbered(1).client == "Thea Marsh"


def test_an_odd_measure_is_asked_about_first(tried: TestClient, book: Book) -> None:
    answer = tried.post("/cards/1/measures", data={"W": "48", "unit": "in"})
    assert answer.status_code == 409 and "Keep it" in answer.text
    assert 'value="48"' in answer.text  # nothing typed is lost
    form = {"W": "48", "unit": "in", "keep W": "on"}
    assert tried.post("/cards/1/measures", data=form).status_code == 200
    last = book.measures.history(book.clients.all()[0])[-1]
    assert last.code == "W" and last.typed == "48"


def test_what_was_written_beside_a_miswritten_measure_stays(page: TestClient) -> None:
    """In centimetres, by whom and when: never 92 in after a fault in cm."""
    page.post("/cards", data={"name": "Thea Marsh"})
    form = {
        "B": "92",
        "W": "ninety",
        "unit": "cm",
        "by": "M. T.",
        "taken": "2026-01-05",
    }
    text = page.post("/cards/1/measures", data=form).text
    assert "Waist girth: " in text and "Thea Marsh, W" not in text
    assert 'value="cm" selected' in text and 'value="in" selected' not in text
    assert 'value="M. T."' in text and 'value="2026-01-05"' in text
    assert 'name="B" value="92"' in text


def test_a_new_card_is_in_the_unit_that_was_written_last(page: TestClient) -> None:
    """Inches in an empty book; then as the house has it, until it chooses otherwise."""
    page.post("/cards", data={"name": "Thea Marsh"})
    assert 'value="in" selected' in page.get("/cards/1").text
    page.post("/cards/1/measures", data={"B": "92", "unit": "cm"})
    page.post("/cards", data={"name": "Ada Lind"})
    assert 'value="cm" selected' in page.get("/cards/2").text
    old = {"B": "36", "unit": "in", "taken": "2020-01-05"}  # written last, not taken
    page.post("/cards/2/measures", data=old)
    page.post("/cards", data={"name": "Runa Holm"})
    assert 'value="in" selected' in page.get("/cards/3").text
    assert 'value="cm" selected' in page.get("/cards/1").text


def test_a_left_side_that_differs_is_drafted_apart(
    tried: TestClient, book: Book
) -> None:
    """Her left shoulder slopes more: written on the card, told there, and drawn."""
    assert "Where her left side differs" in tried.get("/cards/1").text
    wrong = tried.post("/cards/1/measures", data={"left.SS": "steep", "unit": "in"})
    assert "Left, shoulder slope: " in wrong.text and 'value="steep"' in wrong.text
    form = {"left.SS": "drop 2 5/8 on 5", "unit": "in"}
    answer = tried.post("/cards/1/measures", data={**form, "keep SS.left": "on"})
    assert answer.status_code == 200 and "(left)" in answer.text
    client = book.clients.all()[0]
    room = Room(InBook(book, new_slip(book, client, "peplum-top", "", None)))
    assert {"BC", "BC-L"} <= room.paper["places"].keys()


def test_a_card_says_what_it_cannot_do_without(page: TestClient) -> None:
    page.post("/cards", data={"name": "Thea Marsh"})
    assert "bust girth for a bodice or a dress; " in page.get("/cards/1").text
    figures = {"B": "92", "W": "74", "HT": "168", "unit": "cm"}
    text = page.post("/cards/1/measures", data=figures).text
    assert "Still to be taken: hip girth for a skirt or trousers." in text
    page.post("/cards/1/measures", data={"H": "98", "unit": "cm"})
    assert "Still to be taken" not in page.get("/cards/1").text


@pytest.mark.parametrize(
    ("path", "form", "says"),
    [
        ("/slips", {"client": "x", "style": "peplum-top"}, "Choose whom"),
        ("/slips", {"client": "1", "style": "cape"}, "not on the shelf"),
        (
            "/slips",
            {"client": "1", "style": "peplum-top", "wanted": "soon"},
            "cannot be read",
        ),
        ("/cards", {"name": "   "}, "blank"),
        ("/cards/77/notes", {"text": "x"}, "no longer in the book"),
        ("/cards/1/measures", {"W": "a hand", "unit": "in"}, "W"),
        ("/cards/1/measures", {"unit": "in"}, "Nothing was written"),
        ("/cards/1/forget", {"name": "Someone"}, "as it stands"),
        ("/slips/1/past", {"state": "99"}, "no state 99"),
    ],
)
def test_faults_are_sentences(
    tried: TestClient, path: str, form: dict[str, str], says: str
) -> None:
    answer = tried.post(path, data=form)
    assert 400 <= answer.status_code < 500
    assert says in answer.text and "Traceback" not in answer.text


@pytest.mark.parametrize("paper", ["a4", "letter", "a0", "roll"])
def test_every_paper_prints_and_previews(tried: TestClient, paper: str) -> None:
    data = tried.get(f"/slips/1/sheets/pattern.pdf?paper={paper}").content
    pages = len(pypdfium2.PdfDocument(data))
    shown = tried.get(f"/slips/1/preview?paper={paper}").json()["pages"]
    assert len(shown) == pages >= 1
    assert all(p.startswith("data:image/png;base64,") for p in shown)


@pytest.mark.parametrize(
    "name",
    [
        "steps.pdf",
        "lesson.pdf",
        "dimensions.pdf",
        "pattern.svg",
        "pattern.dxf",
        "pattern.plt",
    ],
)
def test_every_sheet_is_saved(tried: TestClient, name: str) -> None:
    answer = tried.get(f"/slips/1/sheets/{name}?save=yes")
    assert answer.status_code == 200 and len(answer.content) > 2_000
    assert f"slip-1-{name}" in answer.headers["content-disposition"]
    assert tried.get("/slips/1/sheets/cape.pdf").status_code == 400


def test_print_never_includes_basting_unless_asked(
    tried: TestClient, book: Book
) -> None:
    slip = book.slips.numbered(1)
    text = book.line.text(slip).replace("length = 6", "length = 9")
    assert text != book.line.text(slip)
    book.bastings.baste(slip, text, "Longer")
    kept = tried.get("/slips/1/sheets/pattern.svg").content
    basted = tried.get("/slips/1/sheets/pattern.svg?basted=yes").content
    assert kept != basted


def _told(s: WebSocketTestSession) -> list[dict[str, Any]]:
    """The paper that changed, and the words."""
    told = [s.receive_json(), s.receive_json()]
    assert [m["is"] for m in told] == ["paper", "state"]
    return told


def test_an_earlier_state_is_taken_up(tried: TestClient, book: Book) -> None:
    with tried.websocket_connect(
        "ws://127.0.0.1/slips/1/table", headers={"origin": "http://127.0.0.1"}
    ) as s:
        _told(s)
        s.send_json({"n": 1, "do": "set", "of": "peplum.length", "to": "8"})
        assert _told(s)[1]["answer"] == 1
        assert tried.post("/slips/1/past", data={"state": "1"}).status_code == 200
        paper, _ = _told(s)
        assert "piece PF" in paper["parts"]
    assert book.slips.numbered(1).state == 1
    assert len(book.line.stitches(book.slips.numbered(1))) == 2


def test_backup_restore_export_import_forget(tried: TestClient, book: Book) -> None:
    backup = tried.get("/shelf/backup").content
    zipped = tried.get("/shelf/export").content
    assert zipfile.ZipFile(io.BytesIO(zipped)).namelist()
    name = book.clients.all()[0].name
    assert tried.post("/cards/1/forget", data={"name": name}).status_code == 200
    assert not book.clients.all()
    files = {"file": ("b.zip", zipped)}
    assert "Taken in" in tried.post("/shelf/import", files=files).text
    assert [c.name for c in book.clients.all()] == [name]
    files = {"file": ("b.db", backup)}
    assert "as it was in the backup" in tried.post("/shelf/restore", files=files).text
    assert len(book.slips.all()) == 1
    files = {"file": ("b.db", b"not a book")}
    assert tried.post("/shelf/restore", files=files).status_code == 400
    assert len(book.slips.all()) == 1


def test_photos_and_notes_lie_on_cards_and_slips(tried: TestClient) -> None:
    from PIL import Image

    picture = io.BytesIO()
    Image.new("RGB", (8, 8), "red").save(picture, "PNG")
    for place in ("/cards/1", "/slips/1"):
        files = {"photo": ("a.png", picture.getvalue())}
        tried.post(f"{place}/photos", files=files, data={"caption": "the back"})
        tried.post(f"{place}/notes", data={"text": "likes it close"})
        page = tried.get(f"{place}{'/past' if 'slips' in place else ''}").text
        assert "the back" in page and "likes it close" in page
    assert tried.get("/photos/1").headers["content-type"] == "image/png"
    bad = {"photo": ("a.png", b"<svg onload=alert(1)>")}
    assert tried.post("/cards/1/photos", files=bad).status_code == 400


@pytest.mark.parametrize("kind", ["slip", "figure", "measuring", "note", "photo"])
def test_one_thing_is_deleted_for_good_when_it_is_meant(
    tried: TestClient, book: Book, kind: str
) -> None:
    brida = book.clients.all()[0]
    note = book.notes.add(brida, "pays in eggs")
    photo = book.photos.add(brida, picture("PNG"), "the back")
    figure = book.measures.history(brida)[0]
    number = {"slip": 1, "note": note.id, "photo": photo.id}.get(kind, figure.id)
    before = [tried.get(p).text for p in ("/cards/1", "/slips/1/past")]
    assert any(f"/forget/{kind}/{number}" in text for text in before)
    asked = tried.get(f"/forget/{kind}/{number}?back=/cards/1")
    assert "for good?" in asked.text and "Keep it" in asked.text

    def kept() -> list[int]:
        return [
            len(book.slips.all()),
            len([m for m in book.measures.history(brida) if m.id == figure.id]),
            len([m for m in book.measures.history(brida) if m.id != figure.id]),
            len(book.notes.of(brida)),
            len(book.photos.of(brida)),
        ]

    was = kept()
    tried.get("/slips/1")  # asking deletes nothing
    assert kept() == was
    gone = tried.post(f"/forget/{kind}/{number}", data={"back": "//evil.example"})
    assert "gone from the book" in gone.text and "evil" not in gone.text
    lost = [a != b for a, b in zip(was, kept(), strict=True)]
    assert (
        lost
        == {
            "slip": [True, False, False, False, False],
            "figure": [False, True, False, False, False],
            "measuring": [False, True, True, False, False],
            "note": [False, False, False, True, False],
            "photo": [False, False, False, False, True],
        }[kind]
    )
    assert tried.post(f"/forget/{kind}/{number}").status_code == 400
    assert tried.get("/cards/1").status_code == 200
    assert tried.get("/forget/cape/1").status_code == 400


def test_a_deleted_slip_is_gone_from_every_window(tried: TestClient) -> None:
    with tried.websocket_connect(
        "ws://127.0.0.1/slips/1/table", headers={"origin": "http://127.0.0.1"}
    ) as s:
        _told(s)
        tried.post("/forget/slip/1")
        with pytest.raises(WebSocketDisconnect):
            s.receive_json()
    assert tried.get("/slips/1").status_code == 400


def test_photos_and_notes_of_card_and_slip_lie_beside_the_table(
    tried: TestClient, book: Book
) -> None:
    book.notes.add(book.clients.all()[0], "pays in eggs")
    book.notes.add(book.slips.numbered(1), "<b>toile first</b>")
    photo = book.photos.add(book.slips.numbered(1), picture("JPEG"), "the back")
    found = tried.get("/slips/1/beside").json()
    assert [(n["text"], n["on"]) for n in found["notes"]] == [
        ("<b>toile first</b>", "this slip"),
        ("pays in eggs", "her card"),
    ]
    assert [(p["id"], p["caption"]) for p in found["photos"]] == [
        (photo.id, "the back")
    ]
    assert tried.get("/slips/9/beside").status_code == 400

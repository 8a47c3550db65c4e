"""Plain files: out and in again to the byte, and nothing harmful comes in."""

import stat
import zipfile
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from books import START, fill, filled, order, slip
from clothwright.body import read_body
from clothwright.book import (
    HOUSE_RULES,
    Book,
    BookError,
    ShelfItem,
    open_book,
    plain,
)
from clothwright.book.opening import open_store
from clothwright.book.tables import CLIENTS
from clothwright.order import read_order


def files(place: Path) -> dict[str, bytes]:
    """What an export holds, by name."""
    if place.is_dir():
        return {
            p.relative_to(place).as_posix(): p.read_bytes()
            for p in place.rglob("*")
            if p.is_file()
        }
    with zipfile.ZipFile(place) as z:
        return {n: z.read(n) for n in z.namelist()}


@pytest.mark.parametrize("name", ["out.zip", "out"])
def test_the_round_trip_is_exact(
    book: Book, exported: Path, tmp_path: Path, name: str
) -> None:
    done = book.import_from(exported)
    assert done.clients == ("Wenna Årsdotter-Qvist", "Odile Marchbank")
    assert done.said == ()
    book.export(tmp_path / name)
    assert files(tmp_path / name) == files(exported)
    with open_book(tmp_path / "third.db") as third:
        third.import_from(tmp_path / name)
        third.export(tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() == exported.read_bytes()


def test_the_round_trip_of_many_is_exact(tmp_path: Path) -> None:
    store = open_store(tmp_path / "book.db")
    rows = [
        {"name": f"Client {n}", "made": START, "changed": START, "revision": 1}
        for n in range(1001)  # names must sort as they count
    ]
    with store.writing() as c:
        c.execute(CLIENTS.insert(), rows)
    book = Book(store)
    last = book.clients.all()[-1]
    for number in (99_999, 7, 123_456):
        book.slips.add(last, f"Top {number}", order(number), number=number)
    book.export(tmp_path / "many.zip")
    book.close()
    with open_book(tmp_path / "other.db") as other:
        assert len(other.import_from(tmp_path / "many.zip").clients) == 1001
        other.export(tmp_path / "again.zip")
    many, again = (tmp_path / f"{n}.zip" for n in ("many", "again"))
    assert many.read_bytes() == again.read_bytes()


def test_what_comes_in_is_what_went_out(
    book: Book, exported: Path, tmp_path: Path
) -> None:
    book.import_from(exported)
    (tmp_path / "filled.db").write_bytes(filled()[0])
    with open_book(tmp_path / "filled.db") as own:
        for a, b in zip(own.slips.all(), book.slips.all(), strict=True):
            assert own.line.stitches(a) == book.line.stitches(b)
            for s in own.line.stitches(a):
                assert own.line.text(a, s.number) == book.line.text(b, s.number)
            assert own.bastings.get(a) == book.bastings.get(b)
            assert (a.title, a.wanted, a.state, a.tip) == (
                b.title,
                b.wanted,
                b.state,
                b.tip,
            )
        for k, m in zip(own.clients.all(), book.clients.all(), strict=True):
            assert own.measures.body(k) == book.measures.body(m)
            for p, q in zip(own.photos.of(k), book.photos.of(m), strict=True):
                assert own.photos.data(p) == book.photos.data(q)
    top = book.slips.numbered(1)
    assert book.line.text(slip(book.line.redo(top))) == order(4)


def test_an_exported_order_can_be_read_beside_its_measures(
    exported: Path, tmp_path: Path
) -> None:
    with zipfile.ZipFile(exported) as z:
        z.extractall(tmp_path / "out")
    client = next((tmp_path / "out/clients").iterdir())
    body = read_body((client / "measures.toml").read_text("utf8"), "measures.toml")
    assert body.client == "Wenna Årsdotter-Qvist"
    text = (client / "slips/0001/order.toml").read_text("utf8")
    (client / "order.toml").write_text(
        text.replace('"brida.toml"', '"measures.toml"'), "utf8"
    )
    assert read_order(client / "order.toml").body == body


def test_files_are_private(book: Book, tmp_path: Path) -> None:
    wenna, _ = fill(book)
    book.export(tmp_path / "out", wenna)
    book.export(tmp_path / "out.zip", wenna)
    assert stat.S_IMODE((tmp_path / "out").stat().st_mode) == 0o700
    assert stat.S_IMODE((tmp_path / "out.zip").stat().st_mode) == 0o600
    for p in (tmp_path / "out").rglob("*.toml"):
        assert stat.S_IMODE(p.stat().st_mode) == 0o600


def test_one_client_goes_out_alone(book: Book, tmp_path: Path) -> None:
    wenna, _ = fill(book)
    book.export(tmp_path / "wenna", wenna)
    names = files(tmp_path / "wenna")
    assert not [n for n in names if "odile" in n or "shelf" in n]
    assert b"Odile" not in b"".join(names.values())
    with pytest.raises(BookError, match="Wenna .* is in this book already"):
        book.import_from(tmp_path / "wenna")
    book.forget(wenna)
    book.import_from(tmp_path / "wenna")
    assert len(book.clients.all()) == 2


def test_a_number_that_is_taken_gives_way(
    book: Book, exported: Path, tmp_path: Path
) -> None:
    thea = book.clients.add("Thea Vane")
    book.slips.add(thea, "Her top", order(1))
    book.shelf.put(ShelfItem(HOUSE_RULES, "# her own\n"))
    done = book.import_from(exported)
    assert done.said == (
        "The house rules of this book were kept.",
        "Slip 1 is slip 3 in this book.",
    )
    assert [s.number for s in book.slips.of(thea)] == [1]
    assert book.slips.numbered(2).title == "Zip top, brown"
    assert book.slips.numbered(3).title == "Peplum top"
    rules = book.shelf.get(HOUSE_RULES)
    assert rules is not None
    assert rules.text == "# her own\n"


def test_a_folder_in_a_folder_is_found(
    book: Book, exported: Path, tmp_path: Path
) -> None:
    packed = tmp_path / "packed.zip"
    with zipfile.ZipFile(packed, "w") as z:
        for name, data in files(exported).items():
            z.writestr(f"my export/{name}", data)
        z.writestr("__MACOSX/my export/._book.toml", b"\x00\x05")
    assert len(book.import_from(packed).clients) == 2


def test_an_export_does_not_overwrite(book: Book, tmp_path: Path) -> None:
    fill(book)
    (tmp_path / "out").mkdir()
    (tmp_path / "out/mine.txt").write_text("mine")
    with pytest.raises(BookError, match="is there already; name a new folder"):
        book.export(tmp_path / "out")
    with pytest.raises(BookError, match="was not written"):
        book.export(tmp_path / "none" / "out")
    with pytest.raises(BookError, match="there is no such folder"):
        book.export(tmp_path / "none" / "out.zip")
    assert [p.name for p in (tmp_path / "out").iterdir()] == ["mine.txt"]


WORDS = st.text(max_size=60)


@given(WORDS, WORDS, st.datetimes(timezones=st.just(UTC)))
def test_any_words_come_through_a_plain_file(
    name: str, note: str, at: datetime
) -> None:
    rows = (plain.NoteRow(at=at, text=note),)
    page = plain.ClientPage(name=name, made=at, changed=at, note=rows)
    assert plain.from_toml(plain.ClientPage, plain.to_toml(page), "client.toml") == page


def test_odd_words_come_through_the_whole(file_book: Book, tmp_path: Path) -> None:
    odd = "\r\n\t\x01\x7f\x85\u2028\ufeff \\ '''' \"\"\"\" # [a] ½ \U0001f9f5 ] = \r"
    client = file_book.clients.add("../../etc \U0001f9f5")
    file_book.notes.add(client, odd)
    made = file_book.slips.add(client, odd, "# \ufeff½ \U0001f9f5\r\n\n\n\ta = 1\r\n")
    file_book.export(tmp_path / "out.zip")
    assert all(".." not in n for n in files(tmp_path / "out.zip"))
    with open_book(tmp_path / "other.db") as other:
        other.import_from(tmp_path / "out.zip")
        (k,) = other.clients.all()
        assert k.name == client.name
        assert [n.text for n in other.notes.of(k)] == [odd]
        got = other.slips.numbered(made.number)
        assert got.title == made.title
        assert other.line.text(got) == file_book.line.text(made)

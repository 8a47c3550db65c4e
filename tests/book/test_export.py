"""Plain files: out and in again to the byte, and nothing harmful comes in."""

import io
import stat
import zipfile
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from books import START, fill, filled, order, picture, slip
from clothwright.body import read_body
from clothwright.book import (
    HOUSE_RULES,
    Book,
    BookError,
    ShelfItem,
    folders,
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


@pytest.fixture
def exported(tmp_path: Path) -> Path:
    """The export of a filled book, as a zip."""
    (tmp_path / "export.zip").write_bytes(filled()[1])
    return tmp_path / "export.zip"


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


Harm = Callable[[zipfile.ZipFile], None]


def _named(name: str, mode: int = 0, data: bytes = b"x") -> Harm:
    def harm(z: zipfile.ZipFile) -> None:
        entry = zipfile.ZipInfo(name)
        entry.external_attr = mode << 16
        z.writestr(entry, data)

    return harm


def _packed_otherwise(z: zipfile.ZipFile) -> None:
    z.writestr("more.toml", b"x", zipfile.ZIP_LZMA)


def _twice(z: zipfile.ZipFile) -> None:
    with pytest.warns(UserWarning, match="Duplicate name"):
        z.writestr("book.toml", b"format = 1\n")


@pytest.mark.parametrize(
    ("harm", "says"),
    [
        (_named("../evil.toml"), "leads elsewhere"),
        (_named("clients/../../evil.toml"), "leads elsewhere"),
        (_named("/tmp/evil.toml"), "leads elsewhere"),
        (_named("..\\evil.toml"), "leads elsewhere"),
        (_named("C:/evil.toml"), "leads elsewhere"),
        (_named("evil", stat.S_IFLNK | 0o777, b"/etc/passwd"), "is a link"),
        (_named("evil", stat.S_IFIFO | 0o600), "is a link"),
        (_packed_otherwise, "packed in an unusual way"),
        (_twice, "holds two files of one name"),
    ],
)
def test_a_harmful_zip_is_refused(
    file_book: Book, exported: Path, tmp_path: Path, harm: Harm, says: str
) -> None:
    before = {p for p in tmp_path.parent.rglob("*") if p.is_file()}
    with zipfile.ZipFile(exported, "a") as z:
        harm(z)
    with pytest.raises(BookError, match=says):
        file_book.import_from(exported)
    assert file_book.clients.all() == ()
    after = {p for p in tmp_path.parent.rglob("*") if p.is_file()}
    assert {p for p in after - before if "book.db" not in p.name} == set()


def _rewritten(place: Path, name: str, data: bytes | None) -> Path:
    """An export with one file changed, or without it."""
    held = files(place)
    (found,) = (n for n in held if n == name or n.endswith(f"0001/{name}"))
    with zipfile.ZipFile(place, "w", zipfile.ZIP_DEFLATED) as z:
        for n, old in held.items():
            new = data if n == found else old
            if new is not None:
                z.writestr(n, new)
    return place


def test_bombs_are_refused(
    file_book: Book, exported: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = exported.read_bytes()
    big = bytes(plain.TEXT_LIMIT + 1)
    for name, data in (("book.toml", big), ("states/0001.toml", big)):
        exported.write_bytes(whole)
        place = _rewritten(exported, name, data)
        assert place.stat().st_size < 100_000, "small to send, large to unpack"
        with pytest.raises(BookError, match="is too large; nothing was imported"):
            file_book.import_from(place)
    exported.write_bytes(whole)
    with zipfile.ZipFile(exported) as z:  # a lie about the size does not help
        entry = z.getinfo("book.toml")
    lie = bytearray(whole)
    at = whole.index(b"PK\x01\x02", entry.header_offset + 1)
    while whole[at + 46 : at + 46 + 9] != b"book.toml":
        at = whole.index(b"PK\x01\x02", at + 1)
    lie[at + 24 : at + 28] = (1).to_bytes(4, "little")
    exported.write_bytes(lie)
    with pytest.raises(BookError):
        file_book.import_from(exported)
    exported.write_bytes(whole)
    monkeypatch.setattr(folders, "MOST_BYTES", 5_000)
    with pytest.raises(BookError, match="is too large; nothing was imported"):
        file_book.import_from(exported)
    monkeypatch.setattr(folders, "MOST_FILES", 10)
    with pytest.raises(BookError, match="too many files to be an export"):
        file_book.import_from(exported)
    assert file_book.clients.all() == ()


def test_a_folder_with_links_is_refused(
    file_book: Book, exported: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "out"
    with zipfile.ZipFile(exported) as z:
        z.extractall(folder)
    (folder / "shelf/more.toml").symlink_to("/etc/hostname")
    with pytest.raises(BookError, match="more.toml in out is a link"):
        file_book.import_from(folder)
    assert file_book.clients.all() == ()


@pytest.mark.parametrize(
    ("name", "old", "new", "says"),
    [
        ("book.toml", "format = 3", "format = 4", "written by a newer Clothwright"),
        ("book.toml", "format = 3", "format =", "book.toml is miswritten"),
        ("book.toml", "format = 3", "a = " + "[" * 9000, "brackets are too deep"),
        ("slip.toml", "state = 3", "state = 9", "states do not follow each other"),
        ("slip.toml", "tip = 4", "tip = 2", "states do not follow each other"),
        ("slip.toml", "parent = 1,", "parent = 4,", "states do not follow each other"),
        ("slip.toml", "number = 2,", "number = 3,", "states do not follow each other"),
        ("slip.toml", "number = 1\n", "number = 0\n", "slip.toml, number: "),
        ("slip.toml", "title", "titel", "slip.toml, "),
        ("slip.toml", "on_state = 3", "on_state = 9", "states do not follow each ot"),
        ("slip.toml", "photos/001.png", "photos/../../x", "is missing"),
        ("slip.toml", "photos/001.png", "order.toml", "This is no photo"),
        ("states/0002.toml", "garment", "garment =", "0002.toml: The order's text is"),
        ("states/0002.toml", None, None, "0002.toml is missing"),
        ("shelf.toml", "calico", "", "a name is blank"),
    ],
)
def test_a_file_that_is_wrong_is_named(
    file_book: Book,
    exported: Path,
    name: str,
    old: str | None,
    new: str | None,
    says: str,
) -> None:
    held = files(exported)
    (found,) = (n for n in held if n == name or n.endswith(f"/0001/{name}"))
    data = None
    if old is not None and new is not None:
        text = held[found].decode()
        assert old in text
        data = text.replace(old, new, 1).encode()
    with pytest.raises(BookError, match=says):
        file_book.import_from(_rewritten(exported, found, data))
    assert file_book.clients.all() == ()
    assert file_book.shelf.all() == ()


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('code = "W"', 'code = "Q"', "Q is no measure that is known here"),
        ('typed = "28 1/4"', 'typed = "wide"', "cannot be read"),
        ('unit = "in"', 'unit = "ell"', "client.toml, measure, 1, unit: "),
        ('side = ""', 'side = "top"', "client.toml, measure, 1, side: "),
        ("taken = 2026-03-09", 'taken = "soon"', "client.toml, measure, 1, taken: "),
        ("+00:00", "", "client.toml, made: "),
    ],
)
def test_a_card_that_is_wrong_is_named(
    file_book: Book, exported: Path, old: str, new: str, says: str
) -> None:
    name = next(
        n
        for n in files(exported)
        if n.endswith(f"001-wenna-arsdotter-qvist/{plain.CLIENT}")
    )
    text = files(exported)[name].decode()
    assert old in text
    with pytest.raises(BookError, match=says):
        file_book.import_from(
            _rewritten(exported, name, text.replace(old, new, 1).encode())
        )
    assert file_book.clients.all() == ()


def test_what_is_no_export_is_refused(
    file_book: Book, exported: Path, tmp_path: Path
) -> None:
    (tmp_path / "photo.zip").write_bytes(picture())
    (tmp_path / "cut.zip").write_bytes(exported.read_bytes()[:-100])
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as z:
        z.writestr("words.txt", b"x")
    (tmp_path / "other.zip").write_bytes(out.getvalue())
    (tmp_path / "empty").mkdir()
    for name, says in (
        ("none.zip", "there is no such file or folder"),
        ("photo.zip", "is no whole zip file"),
        ("cut.zip", "is no whole zip file"),
        ("other.zip", "is no export of a book"),
        ("empty", "is no export of a book"),
    ):
        with pytest.raises(BookError, match=says):
            file_book.import_from(tmp_path / name)


def test_a_locked_zip_is_refused(file_book: Book, exported: Path) -> None:
    data = bytearray(exported.read_bytes())
    at = data.index(b"PK\x01\x02")
    data[at + 8] |= 1  # the flag of an encrypted entry, zip's own note 4.4.4
    exported.write_bytes(data)
    with pytest.raises(BookError, match="is locked with a password"):
        file_book.import_from(exported)

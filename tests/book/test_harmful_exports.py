"""What comes in is looked at first: zips that harm, links, files that are wrong."""

import io
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from book.test_export import files
from books import picture
from clothwright.book import (
    Book,
    BookError,
    folders,
    plain,
)

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

"""Notes and photos: on a card or a slip, kept as they came, known by their content."""

import io
import struct
import zlib

import pytest
from PIL import Image

from books import fill, picture
from clothwright.book import Book, BookError, PhotoKind
from clothwright.book.notes import LARGEST_PHOTO


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_comes_back_as_it_was(book: Book, kind: str) -> None:
    thea = book.clients.add("Thea Vane")
    data = picture(kind)
    photo = book.photos.add(thea, data, " back  gapes ")
    assert (photo.kind, photo.caption, photo.size) == (
        PhotoKind[kind],
        "back gapes",
        len(data),
    )
    assert book.photos.of(thea) == (photo,)
    assert book.photos.get(photo.id) == photo
    assert book.photos.data(photo) == data
    book.forget(photo)
    assert book.photos.of(thea) == ()
    with pytest.raises(BookError, match="This photo is no longer in the book"):
        book.photos.data(photo)
    with pytest.raises(BookError, match="This photo is no longer in the book"):
        book.photos.get(photo.id)


def test_a_phone_s_double_picture_is_a_jpeg(book: Book) -> None:
    out = io.BytesIO()
    first, second = (Image.new("RGB", (16, 16), c) for c in ("#9c2a2a", "#1d3a5f"))
    first.save(out, "MPO", save_all=True, append_images=[second])
    photo = book.photos.add(book.clients.add("Thea Vane"), out.getvalue())
    assert photo.kind is PhotoKind.JPEG


def _png(width: int, height: int) -> bytes:
    """A PNG that claims a size, with next to nothing in it."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        whole = kind + data
        return (
            struct.pack(">I", len(data)) + whole + struct.pack(">I", zlib.crc32(whole))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = (
        chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"")) + chunk(b"IEND", b"")
    )
    return b"\x89PNG\r\n\x1a\n" + body


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "This is no photo"),
        (b"back gapes", "This is no photo"),
        (b"\xff\xd8\xff\xe0 back.jpg", "This is no photo"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "This is no photo"),
        (picture("GIF"), "This is no photo"),
        (picture("TIFF"), "This is no photo"),
        (picture("PNG")[:60], "This is no photo"),
        (picture("PNG").replace(b"IDAT", b"IDAX"), "This is no photo"),
        (bytes(LARGEST_PHOTO + 1), "This photo has 21 MB; send one of at most 21 MB"),
        (_png(12_000, 12_000), "too large when opened"),
        (_png(65_000, 65_000), "too large when opened"),
    ],
)
def test_what_is_no_photo_is_refused(book: Book, data: bytes, says: str) -> None:
    thea = book.clients.add("Thea Vane")
    with pytest.raises(BookError, match=says):
        book.photos.add(thea, data, "back.jpg")
    assert book.photos.of(thea) == ()


def test_notes_are_kept_to_the_letter(book: Book) -> None:
    thea = book.clients.add("Thea Vane")
    text = "Likes wide collars.\r\n\tNot green;  ever. ½ ✂ \U0001f9f5\n"
    first = book.notes.add(thea, text)
    second = book.notes.add(thea, "Pays by the half")
    assert book.notes.of(thea) == (first, second)
    assert first.text == text
    book.forget(first)
    assert book.notes.of(thea) == (second,)
    with pytest.raises(BookError, match="The note is blank"):
        book.notes.add(thea, " \n")


def test_card_and_slip_keep_their_own(book: Book) -> None:
    wenna, top = fill(book)
    assert [n.text for n in book.notes.of(top)] == ["Hem by hand"]
    assert len(book.notes.of(wenna)) == 1
    assert [p.kind.name for p in book.photos.of(top)] == ["PNG", "WEBP"]
    assert [p.kind.name for p in book.photos.of(wenna)] == ["JPEG"]

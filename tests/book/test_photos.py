"""Notes and photos: on a card or a slip, kept as they came, known by their content."""

import io
import sqlite3
import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image, ImageChops
from PIL.PngImagePlugin import PngInfo

from books import fill, picture
from clothwright.book import Book, BookError, PhotoKind, open_book
from clothwright.book.pictures import LARGEST_PHOTO, bare
from clothwright.book.tables import VERSION_TABLE


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


PLACE = b"GPS-of-her-house"


def _with_metadata(kind: str) -> bytes:
    """A picture as a phone takes it: lying on its side, with place, time and maker."""
    image = Image.new("RGB", (64, 40), "#9c2a2a")
    image.paste("#1d3a5f", (0, 0, 64, 8))  # blue at the top of the sensor
    exif = Image.Exif()
    exif[0x010F] = "Maker Serial 4711"
    exif[0x0112] = 6  # to be turned a quarter to the right
    exif[0x8769] = {0x9003: "2027:05:03 08:00:00"}
    exif[0x8825] = {1: "N", 2: (50.0, 1.0, 2.0), 27: PLACE}
    out = io.BytesIO()
    extra: dict[str, object] = {"exif": exif}
    if kind == "PNG":
        words = PngInfo()
        words.add_text("Author", "Thea's phone")
        extra["pnginfo"] = words
    if kind == "JPEG":
        extra |= {"comment": b"Thea's phone", "quality": 88}
    image.save(out, kind, **extra)
    return out.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_what_a_camera_wrote_is_left_out(book: Book, kind: str) -> None:
    taken = _with_metadata(kind)
    secrets = [PLACE, b"Maker Serial", b"2027:05:03"]
    secrets += [] if kind == "WEBP" else [b"Thea's phone"]
    assert all(s in taken for s in secrets), "the search finds bytes"
    photo = book.photos.add(book.clients.add("Thea Vane"), taken, "side")
    kept = book.photos.data(photo)
    assert photo.kind is PhotoKind[kind] and photo.size == len(kept)
    assert not any(s in kept for s in secrets)
    with Image.open(io.BytesIO(kept)) as image:
        assert image.size == (40, 64), "it stands as it is to be seen"
        assert not dict(image.getexif())
        colours = image.convert("RGB")
    r, _, b = colours.crop((37, 30, 38, 31)).tobytes()
    assert b > r, "what was at the top is at the right"
    r, _, b = colours.crop((10, 30, 11, 31)).tobytes()
    assert r > b
    assert bare(kept)[0] == kept, "a second time there is nothing to leave out"


def test_an_older_book_s_photos_lose_it_when_it_is_opened(tmp_path: Path) -> None:
    """Down to the bytes of the file; what is no picture, and a bare one, stay."""
    path = tmp_path / "book.db"
    with open_book(path) as book:
        thea = book.clients.add("Thea Vane")
        bare_one, taken, odd = (
            book.photos.add(thea, picture("JPEG"), said) for said in ("a", "b", "c")
        )
    old = _with_metadata("JPEG")
    with sqlite3.connect(path) as c:
        for data, size, n in ((old, len(old), taken.id), (PLACE[:3], 3, odd.id)):
            new = "UPDATE photos SET data = ?, size = ? WHERE id = ?"
            c.execute(new, (data, size, n))
        c.execute(f"UPDATE {VERSION_TABLE} SET version_num = '0004'")
    c.close()
    assert PLACE in path.read_bytes()
    with open_book(path) as book:
        kept = {p.caption: book.photos.data(p) for p in book.photos.of(thea)}
        sizes = {p.caption: p.size for p in book.photos.of(thea)}
    assert kept == {"a": picture("JPEG"), "b": bare(old)[0], "c": PLACE[:3]}
    assert sizes == {name: len(data) for name, data in kept.items()}
    assert bare_one.size == sizes["a"]
    for file in tmp_path.iterdir():
        assert PLACE not in file.read_bytes()


def test_what_hangs_on_behind_a_picture_is_left_out(book: Book) -> None:
    """As phones that film before they take a picture hang a film on it."""
    thea = book.clients.add("Thea Vane")
    for kind in ("JPEG", "PNG", "WEBP"):
        photo = book.photos.add(thea, picture(kind) + b"ftyp-a-film" * 50)
        assert b"a-film" not in book.photos.data(photo)


def test_a_clear_ground_and_its_colours_stay(book: Book) -> None:
    image = Image.new("P", (20, 20), 0)
    image.putpalette([10, 20, 30, 200, 30, 40])
    image.info["transparency"] = 0
    image.paste(1, (5, 5, 15, 15))
    words = PngInfo()
    words.add_text("Comment", "hers")
    out = io.BytesIO()
    image.save(out, "PNG", pnginfo=words, transparency=0)
    photo = book.photos.add(book.clients.add("Thea Vane"), out.getvalue())
    with Image.open(io.BytesIO(book.photos.data(photo))) as kept:
        seen = kept.convert("RGBA")
    assert seen.getpixel((0, 0)) == (10, 20, 30, 0)
    assert seen.getpixel((9, 9)) == (200, 30, 40, 255)


def test_a_jpeg_loses_next_to_nothing() -> None:
    """Written with its own tables: no pixel differs by more than 6 of 255."""
    noise = Image.effect_noise((96, 96), 40).convert("RGB")
    out = io.BytesIO()
    noise.save(out, "JPEG", quality=80, comment=b"hers")
    was, kept = (
        Image.open(io.BytesIO(d)).convert("RGB")
        for d in (out.getvalue(), bare(out.getvalue())[0])
    )
    assert max(ImageChops.difference(kept, was).tobytes()) <= 6

"""Photos as they are taken into the book: their kind, and nothing but the picture.

A photo's kind is read from its content, whatever its name says: JPEG, PNG or WebP. What
a camera or a program wrote beside the picture (place, time, serial numbers, a smaller
copy, words) is left out, and the picture is turned as it is to be seen. A picture that
carries nothing of this keeps its bytes.
"""

import io
import warnings

from PIL import Image, ImageOps, JpegImagePlugin, UnidentifiedImageError

from clothwright.book.errors import BookError
from clothwright.book.values import PhotoKind

LARGEST_PHOTO = 20 * 1024 * 1024
"""Bytes; a phone's pictures are 2 to 12 MB."""

MOST_PIXELS = 120_000_000
"""Of a picture when it is opened: more than any phone takes."""

QUALITY = 92
"""Of a WebP that is written anew; a JPEG keeps its own."""

_KINDS = {
    "JPEG": PhotoKind.JPEG,
    "MPO": PhotoKind.JPEG,  # a JPEG that carries a second picture, as phones write
    "PNG": PhotoKind.PNG,
    "WEBP": PhotoKind.WEBP,
}

_OF_THE_PICTURE = frozenset(
    {
        *("jfif", "jfif_version", "jfif_unit", "jfif_density", "dpi", "adobe"),
        *("adobe_transform", "progressive", "progression", "icc_profile", "gamma"),
        *("transparency", "srgb", "chromaticity", "aspect", "interlace", "background"),
        *("loop", "duration", "timestamp"),
    }
)
"""What a file may say of how its picture is to be shown."""

_ENDS = {
    "JPEG": (b"\xff\xd9",),
    "PNG": (b"IEND\xaeB`\x82",),
}


def bare(data: bytes) -> tuple[bytes, PhotoKind]:
    """The picture alone, and its kind. Raises BookError when it is no photo."""
    if len(data) > LARGEST_PHOTO:
        raise BookError(
            f"This photo has {len(data) / 1e6:.0f} MB; send one of at most "
            f"{LARGEST_PHOTO / 1e6:.0f} MB."
        )
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # its own bound on pixels; ours is below
            with _opened(data) as image:
                kind, pixels = _KINDS[image.format or ""], image.width * image.height
                if pixels <= MOST_PIXELS:
                    image.verify()
                    data = _without(data)
    except Image.DecompressionBombError:
        pixels, kind = MOST_PIXELS + 1, PhotoKind.PNG
    except (UnidentifiedImageError, KeyError, OSError, SyntaxError, ValueError):
        raise BookError(
            "This is no photo that the book keeps; send a JPEG, PNG or WebP picture."
        ) from None
    if pixels > MOST_PIXELS:
        raise BookError("This picture is too large when opened; send a smaller one.")
    return data, kind


def _opened(data: bytes) -> Image.Image:
    return Image.open(io.BytesIO(data), formats=("JPEG", "PNG", "WEBP"))


def _without(data: bytes) -> bytes:
    with _opened(data) as image:
        image.load()  # a PNG may say more behind its picture
        if not _says_more(data, image):
            return data
        seen = ImageOps.exif_transpose(image)
        colour = seen.info.get("icc_profile")
        clear = seen.info.get("transparency")
        seen.info = {} if clear is None else {"transparency": clear}
        out = io.BytesIO()
        if isinstance(image, JpegImagePlugin.JpegImageFile):
            seen.save(
                out,
                "JPEG",
                qtables=image.quantization,
                subsampling=JpegImagePlugin.get_sampling(image),
                icc_profile=colour,
            )
        elif image.format == "PNG":
            seen.save(out, "PNG", icc_profile=colour)
        else:
            seen.save(out, "WEBP", quality=QUALITY, icc_profile=colour)
        return out.getvalue()


def _says_more(data: bytes, image: Image.Image) -> bool:
    """Whether there is more in a file than a picture and how it is to be shown."""
    if image.format == "MPO" or not set(image.info) <= _OF_THE_PICTURE:
        return True
    if image.format == "WEBP":
        return len(data) != int.from_bytes(data[4:8], "little") + 8
    return not data.endswith(_ENDS.get(image.format or "", ()))

"""Words for machines that know 7-bit ASCII only.

Fractions are written out ("13⅜ in" becomes "13 3/8 in"), accents dropped, signs
replaced by words or look-alikes; what is left over becomes "?".
"""

import re
import unicodedata

_SIGNS = {
    "·": "-",
    "–": "-",
    "—": "-",
    "−": "-",
    "×": "x",
    "±": "+/-",
    "°": " deg",
    "′": "'",
    "″": '"',
    "’": "'",
    "‘": "'",
    "“": '"',
    "”": '"',
    "…": "...",
    "⁄": "/",
    "≤": "<=",
    "≥": ">=",
    "→": "->",
    "←": "<-",
    "ß": "ss",
    "æ": "ae",
    "Æ": "AE",
    "ø": "o",
    "Ø": "O",
    "ł": "l",
    "Ł": "L",
    "đ": "d",
    "Đ": "D",
    "²": "2",
    "€": "EUR",
}


def plain(text: str) -> str:
    """The text in printable ASCII, on one line, without doubled blanks."""
    out: list[str] = []
    for ch in text:
        written = _SIGNS.get(ch)
        if written is None:
            form = unicodedata.normalize("NFKD", ch)
            if "⁄" in form:
                gap = " " if out and out[-1][-1:].isdigit() else ""
                form = gap + form.replace("⁄", "/")
            written = "".join(c for c in form if not unicodedata.combining(c))
        out.append(written)
    joined = re.sub(r"\s+", " ", "".join(out)).strip()
    return "".join(c if " " <= c <= "~" else "?" for c in joined)

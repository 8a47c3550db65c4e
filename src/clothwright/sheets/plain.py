"""Words for machines that know 7-bit ASCII only.

Fractions are written out with their gap ("13⅜ in" becomes "13 3/8 in", "7¹¹⁄₁₆"
becomes "7 11/16"), accents dropped, signs replaced by words or look-alikes; what is
left over becomes "?".
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


def _raised(ch: str) -> bool:
    """True for the small figures above a fraction's stroke."""
    return unicodedata.decomposition(ch).startswith("<super>") and ch.isdigit()


def plain(text: str) -> str:
    """The text in printable ASCII, on one line, without doubled blanks."""
    out: list[str] = []
    raised = False
    for ch in text:
        was_raised, raised = raised, _raised(ch)
        if raised and not was_raised and out and out[-1][-1:].isdigit():
            out.append(" ")
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

"""Nested sizes as one picture: SVG with a group for each size.

Each size is a group whose id is "size-" and its name; in it stands a group for each
piece. What all sizes have in common is the group "common". As `svg`: millimetres, true
cubics.
"""

from collections import Counter
from html import escape

from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import ROLL_WIDTH, PageFormat, Scale, frame_of
from clothwright.sheets.looks import moved, scaled, strokes
from clothwright.sheets.nest import SHARED, Nest
from clothwright.sheets.nest_looks import (
    laid_on,
    samples,
    size_strokes,
    with_names,
)
from clothwright.sheets.nest_words import words_apart
from clothwright.sheets.svg import about, headed, id_of, stroke_of, text_of


def nest_svg_of(nested: Nest, scale: Scale = Scale.FULL) -> str:
    """The picture as text, laid as on a roll of the usual width."""
    frame = frame_of(PageFormat.ROLL, ROLL_WIDTH)
    common = [scaled(n.common, scale.value) for n in nested.pieces]
    laid = arrange(common, frame, whole=True)
    out = headed(nested.about.title, about(nested.about, scale), laid.pieces)
    taken: Counter[str] = Counter()
    out.append('<g id="common">')
    for piece in laid.pieces:
        name = id_of(f"common.{piece.code}", taken)
        out.append(f'<g id="{name}"><title>{escape(piece.name, quote=False)}</title>')
        for stroke in strokes(piece, figure=scale.value):
            if stroke.meaning in SHARED:
                key = id_of(f"{name}.{stroke.meaning.name}.{stroke.note}", taken)
                out.append(stroke_of(stroke, key))
        shared, _ = words_apart(piece.texts)
        out.extend(text_of(t) for t in shared)
        out.append("</g>")
    out.append("</g>")
    own = [words_apart(p.texts)[1] for p in laid.pieces]
    looks = samples(nested.sizes)
    each = [
        {s: moved(p, laid_on(m, scale)) for s, p in with_names(n).each.items()}
        for n, m in zip(nested.pieces, laid.motions, strict=True)
    ]
    for size in nested.sizes:
        group = id_of(f"size-{size}", taken)
        out.append(
            f'<g id="{group}"><title>{escape(f"size {size}", quote=False)}</title>'
        )
        for pieces, words in zip(each, own, strict=True):
            if size not in pieces:
                continue
            piece = pieces[size]
            name = id_of(f"{group}.{piece.code}", taken)
            out.append(
                f'<g id="{name}"><title>{escape(piece.name, quote=False)}</title>'
            )
            for _, stroke in size_strokes(piece, looks[size], figure=scale.value):
                key = id_of(f"{name}.{stroke.meaning.name}.{stroke.note}", taken)
                out.append(stroke_of(stroke, key))
            out.extend(text_of(t, halo=True) for t in piece.texts)
            out.extend(text_of(t) for t in words.get(size, ()))
            out.append("</g>")
        out.append("</g>")
    out.append("</svg>\n")
    return "\n".join(out)

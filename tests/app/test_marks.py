"""What the checks say stands at its place on the paper."""

from dataclasses import replace
from typing import Any

import pytest

from clothwright.app.changes import change
from clothwright.app.keeping import InBook
from clothwright.app.marks import whereabouts
from clothwright.app.room import Room
from clothwright.app.table import stands
from clothwright.app.words import paragraphs
from clothwright.app.workshop import made_up
from clothwright.book import Book
from clothwright.features.block import Block
from clothwright.features.openings.loops import Loops
from clothwright.findings import Finding, Severity
from clothwright.units import Unit


def marked(room: Room, *found: Finding) -> list[dict[str, Any]]:
    assert room.draft is not None
    return whereabouts(room.draft, found or room.draft.findings)


def doubt(code: str, place: str) -> Finding:
    return Finding(code, Severity.WARN, "Look.", place)


def set_to(room: Room, of: str, to: str) -> None:
    assert change(room, {"do": "set", "of": of, "to": to}) is None


@pytest.mark.parametrize(
    ("of", "to", "says", "piece", "edges"),
    [
        # a tightening turns the front shoulder
        (
            "sleeveless armhole.narrowed",
            "1 1/2 in",
            "turns the shoulder",
            "FC",
            ["FC.shoulder"],
        ),
        # loops stand along the open back
        ("low open back.top", "0", "buttons of the two rows", "BC", ["BC.slant"]),
        # a pin stands for the set-in at the waist
        ("low open back.top", "0", "stand further apart", "BC", []),
        # what is said of a whole piece
        ("panel behind.overlap", "1 7/8", "reaches beyond the panel", "UP", []),
    ],
)
def test_a_finding_stands_where_it_is_about(
    room: Room, of: str, to: str, says: str, piece: str, edges: list[str]
) -> None:
    set_to(room, of, to)
    found = [m for m in marked(room) if says in m["say"]]
    assert [(m["piece"], m["edges"]) for m in found] == [(piece, edges)]


def test_a_mark_lies_on_its_edge(room: Room) -> None:
    """On the line of the edge, by the distance to points along it (0.5 mm)."""
    set_to(room, "sleeveless armhole.narrowed", "1 1/2 in")
    assert room.draft is not None
    sheet = room.draft.sheet
    for m in marked(room):
        for edge in m["edges"][:1]:
            path = sheet.edge(*edge.rsplit(".", 1)).path
            along = [path.at_length(path.length * i / 400) for i in range(401)]
            x, y = (v / 10 for v in m["at"])
            assert min((p.x - x) ** 2 + (p.y - y) ** 2 for p in along) < 0.05**2


def test_a_pin_and_a_mark_of_one_number_stand_together(room: Room) -> None:
    assert room.draft is not None
    for f in room.draft.order.features:
        for pin in f.pins:
            at = stands(room.draft.sheet, pin)
            if at is None:
                continue
            (m,) = marked(room, doubt("usual", f.numbers()[pin.field].symbol))
            assert (m["piece"], m["word"]) == (at[0], f"{f.kind}.{pin.field}")
            assert m["at"] == pytest.approx([at[1].x * 10, at[1].y * 10], abs=0.01)


def test_a_seam_is_marked_on_both_its_sides(room: Room) -> None:
    assert room.draft is not None
    for seam in room.draft.sheet.seams:
        (m,) = marked(room, doubt(seam.code, seam.name))
        wanted = {str(r) for r in (*seam.left, *seam.right)}
        assert set(m["edges"]) == wanted
    (m,) = marked(room, doubt("notch", "front panel"))
    assert set(m["edges"]) >= {"FC.panel"}


def test_pieces_and_edges_are_known_by_name_and_by_code(book: Book) -> None:
    """Also those of a lining, whose codes have a full stop of their own."""
    room = Room(InBook(book, made_up(book, "panelled-top")))
    assert room.draft is not None
    for piece in room.draft.sheet.pieces.values():
        for place in (piece.code, piece.name):
            (m,) = marked(room, doubt("grain", place))
            assert m["piece"] == piece.code
        for edge in piece.edges:
            for place in (f"{piece.code}.{edge.name}", f"{piece.name}, {edge.name}"):
                (m,) = marked(room, doubt("shape", place))
                assert m["edges"] == [f"{piece.code}.{edge.name}"]


def test_what_is_about_the_body_alone_stands_nowhere(room: Room) -> None:
    (m,) = marked(room, doubt("R9", "NBP"))
    assert m["piece"] == ""


def test_a_feature_says_where_its_words_are_seen(
    room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A new check needs nothing but its own feature: at the first edge that is there,
    and before what another feature shows under the same symbol."""
    monkeypatch.setattr(Loops, "shows", {"far": ("SL.cap", "FS.side"), "e": ("FC.cf",)})
    monkeypatch.setattr(Block, "shows", {"far": ("BS.side",), "e": ("BC.waist",)})
    (m,) = marked(room, doubt("L9", "e"))
    assert (m["edges"], m["word"]) == (["FC.cf"], "loops.ends_apart")
    (m,) = marked(room, doubt("L9", "far"))
    assert m["edges"] == ["BS.side"], "a word of no feature: the first that shows it"
    monkeypatch.setattr(Block, "shows", {})
    (m,) = marked(room, doubt("L9", "far"))
    assert m["edges"] == ["FS.side"]


def test_what_features_show_are_edges(room: Room) -> None:
    """Of a piece and an edge; those of the main garment are all on its table."""
    assert room.draft is not None
    sheet = room.draft.sheet
    for feature in room.draft.order.features:
        for place, edges in feature.shows.items():
            pairs = [e.rpartition(".")[::2] for e in edges]
            assert all(piece and edge for piece, edge in pairs), place
            assert any(p in sheet.pieces and sheet.piece(p).has(e) for p, e in pairs), (
                f"{feature.kind}, {place}"
            )


def test_notes_are_not_marked(room: Room) -> None:
    assert marked(room, Finding("Q5", Severity.NOTE, "So.", "FC")) == []


def test_what_finishing_finds_is_told_under_seams(room: Room) -> None:
    """As the print page says it, so that the slip never says that all is well."""
    fault = Finding("hollow", Severity.REFUSE, "Too tight a hollow.", "FC")
    reading = replace(room.reading(Unit.IN), found=(fault,))
    seams = paragraphs(reading)["Seams"]
    assert seams[0]["runs"] == ["One thing to mend before anything is cut."]
    assert seams[1]["runs"] == ["Too tight a hollow."] and seams[1]["grave"]

"""A slip open: changes kept, tried, taken back; the paper drawn anew."""

from datetime import date

import pytest

from clothwright.app.changes import change
from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.slipfile import read_slip
from clothwright.app.table import pins
from clothwright.app.workshop import new_slip
from clothwright.book import HOUSE_RULES, Book, ShelfItem
from clothwright.features import KINDS
from clothwright.order import draft
from clothwright.order.pattern import pattern
from clothwright.units import Unit

mm = 0.1


def depth(room: Room) -> float:
    assert room.draft is not None
    return room.draft.numbers["Df"]


def test_a_change_is_kept_at_once(book: Book, room: Room) -> None:
    assert change(room, {"do": "set", "of": "neckline.depth", "to": "4"}) is None
    assert abs(depth(room) - 4 * 2.54) < 0.01 * mm
    assert room.said == "Depth of the front neck 4 in, was 3 1/8 in"
    again = Room(InBook(book, book.slips.numbered(1)))
    assert abs(depth(again) - 4 * 2.54) < 0.01 * mm


def test_pulling_draws_but_keeps_nothing(book: Book, room: Room) -> None:
    states = len(book.line.stitches(book.slips.numbered(1)))
    for i in range(5):
        change(room, {"do": "set", "of": "neckline.depth", "cm": 8 + i, "live": True})
    assert abs(depth(room) - 12) < 0.8 * mm  # to 1/16 in, as the order is written
    assert len(book.line.stitches(book.slips.numbered(1))) == states


def test_undo_and_redo_have_no_end(room: Room) -> None:
    wanted = [3.25 + i / 8 for i in range(20)]
    for w in wanted:
        change(room, {"do": "set", "of": "neckline.depth", "to": f"{w}"})
    for w in reversed(wanted[:-1]):
        change(room, {"do": "unpick"})
        assert abs(depth(room) - w * 2.54) < 0.01 * mm
    change(room, {"do": "unpick"})
    assert change(room, {"do": "unpick"}) is not None  # nothing is left
    for w in wanted:
        assert change(room, {"do": "again"}) is None
        assert abs(depth(room) - w * 2.54) < 0.01 * mm
    assert change(room, {"do": "again"}) is not None


def test_basting_is_kept_apart_and_outlives_the_program(book: Book, room: Room) -> None:
    change(room, {"do": "baste"})
    change(room, {"do": "set", "of": "neckline.depth", "to": "4"})
    change(room, {"do": "set", "of": "peplum.length", "to": "7"})
    assert "FC" in room.under and "PF" in room.under and "FS" not in room.under
    kept = read_slip(book.line.text(book.slips.numbered(1)))
    assert any(f.get("depth") == "3 1/8" for f in kept["feature"])
    again = Room(InBook(book, book.slips.numbered(1)))
    assert again.basting and abs(depth(again) - 4 * 2.54) < 0.01 * mm


def test_unpicking_a_basting_goes_change_by_change(room: Room) -> None:
    change(room, {"do": "baste"})
    change(room, {"do": "set", "of": "neckline.depth", "to": "4"})
    change(room, {"do": "set", "of": "neckline.depth", "to": "5"})
    change(room, {"do": "unpick"})
    assert abs(depth(room) - 4 * 2.54) < 0.01 * mm
    change(room, {"do": "unpick"})
    assert abs(depth(room) - 3.125 * 2.54) < 0.01 * mm
    assert not room.basting and not room.under


def test_what_cannot_be_drawn_is_refused_with_the_nearest_value(room: Room) -> None:
    before = room.paper
    refusal = change(room, {"do": "set", "of": "low open back.depth", "to": "14"})
    assert refusal is not None and "from 3 1/8 in to 9 7/16 in" in refusal.sentence
    assert refusal.nearest is not None
    assert room.paper == before
    say = str(refusal.nearest["say"])
    assert say.startswith("Make it ")
    nearest = {k: v for k, v in refusal.nearest.items() if k != "say"}
    assert change(room, nearest) is None


@pytest.mark.parametrize("to", ["", "wide", "1/0", "-3", "nan", "3 4 5", "1e99"])
def test_what_cannot_be_read_is_refused(room: Room, to: str) -> None:
    refusal = change(room, {"do": "set", "of": "neckline.depth", "to": to})
    assert refusal is not None and refusal.sentence.endswith(".")
    assert abs(depth(room) - 3.125 * 2.54) < 0.01 * mm


def test_a_measure_goes_to_the_card_and_odd_ones_are_asked_about(
    book: Book, room: Room
) -> None:
    client = book.clients.all()[0]
    before = len(book.measures.history(client))
    assert change(room, {"do": "measure", "of": "m:W", "to": "29 1/2"}) is None
    assert len(book.measures.history(client)) == before + 1
    asked = change(room, {"do": "measure", "of": "m:W", "to": "48"})
    assert asked is not None and asked.nearest is not None
    assert len(book.measures.history(client)) == before + 1
    change(room, asked.nearest)
    assert len(book.measures.history(client)) == before + 2


def test_newer_figures_of_the_card_are_offered(book: Book, room: Room) -> None:
    assert room.newer() == {}
    client = book.clients.all()[0]
    from datetime import date

    book.measures.record(client, {"W": "29 1/2"}, unit=Unit.IN, taken=date.today())
    room.reread()
    assert list(room.newer()) == ["W"]
    change(room, {"do": "card"})
    assert room.newer() == {}
    assert abs(room.order.body["W"] - 29.5 * 2.54) < 0.1 * mm


def test_house_rules_of_the_shelf_hold(book: Book, room: Room) -> None:
    assert room.draft is not None
    usual = room.draft.numbers["Dm"]
    book.shelf.put(
        ShelfItem(HOUSE_RULES, 'unit = "in"\n[rules]\nDm = "B/6 + 1.25 in"\n')
    )
    room.reread()
    assert abs(room.draft.numbers["Dm"] - usual - 0.25 * 2.54) < 0.01 * mm


def test_the_table_is_the_pattern_that_is_printed(room: Room) -> None:
    """The screen's pieces and the printed ones are the same lines."""
    assert room.draft is not None
    drawn = {p.code: p for p in pattern(draft(room.order)).drawn.pieces}
    assert drawn.keys() == room.paper["pieces"].keys()
    for code, piece in room.paper["pieces"].items():
        assert len(piece["edges"]) == len(room.draft.sheet.piece(code).edges)
        left, top, right, bottom = drawn[code].cut_line.bounds()
        assert piece["box"] == pytest.approx(
            [left * 10, top * 10, (right - left) * 10, (bottom - top) * 10], abs=1e-3
        )


def test_pieces_lie_apart_on_the_table(room: Room) -> None:
    boxes = []
    for code, (x, y) in room.paper["places"].items():
        left, top, wide, tall = room.paper["pieces"][code]["box"]
        boxes.append((left + x, top + y, left + x + wide, top + y + tall))
    for i, a in enumerate(boxes):
        for b in boxes[i + 1 :]:
            assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_a_pin_goes_as_its_number_says(room: Room) -> None:
    """Pulled by 5 mm, each pin's point moves 5 mm along its way (less where a corner
    is rounded or a waist is trued)."""
    for pin in pins(room.reading(Unit.IN)):
        kind, _, name = str(pin["of"]).rpartition(".")
        grown = pin["value"] + 0.5
        if pin["high"] is not None and grown > pin["high"]:
            continue
        change(room, {"do": "set", "of": pin["of"], "cm": grown, "live": True})
        moved = next(p for p in pins(room.reading(Unit.IN)) if p["of"] == pin["of"])
        dx = moved["at"][0] - pin["at"][0]
        dy = moved["at"][1] - pin["at"][1]
        along = dx * pin["way"][0] + dy * pin["way"][1]
        assert along == pytest.approx(5.0, abs=1.0), (kind, name)
        change(room, {"do": "set", "of": pin["of"], "cm": pin["value"], "live": True})


@pytest.mark.parametrize(
    ("style", "unit", "kind", "cm"),
    [
        ("peplum-top", "cm", "peplum", 6 * 2.54),
        ("straight-skirt", "in", "straight skirt", 60.0),
    ],
)
def test_a_slip_is_written_in_the_unit_of_her_measures(
    book: Book, style: str, unit: str, kind: str, cm: float
) -> None:
    """A style told in inches is printed in centimetres for her who is measured so, and
    the other way round; nothing is longer or shorter by it."""
    client = book.clients.add("Thea Marsh")
    typed = {"B": "92 cm", "W": "74 cm", "H": "98 cm", "HT": "168 cm"}
    taken = date(2026, 1, 5)
    book.measures.record(client, typed, unit=Unit(unit), taken=taken)
    slip = new_slip(book, client, style, "", None)
    made = Room(InBook(book, slip)).draft
    assert made is not None and made.order.unit is Unit(unit)
    length = KINDS[kind].numbers()["length"].key
    assert made.numbers[length] == pytest.approx(cm, abs=0.1 * mm)
    assert made.order.cloths["shell"].width == pytest.approx(
        140 if style == "peplum-top" else 146, abs=0.1 * mm
    )

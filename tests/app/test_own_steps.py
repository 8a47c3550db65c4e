"""Her own steps on a slip: taken, taken out, kept under a name for all orders."""

from typing import Any

from clothwright.app.behind import behind_field
from clothwright.app.changes import change
from clothwright.app.keeping import InBook
from clothwright.app.own_steps import behind_steps
from clothwright.app.room import Room
from clothwright.book import HOUSE_RULES, Book, ShelfItem
from clothwright.order.styles import named_styles
from clothwright.units import Unit

YOKE: dict[str, Any] = {
    "do": "cut",
    "piece": "FC",
    "from": {"edge": "panel", "from": "waist", "share": "1/2"},
    "to": {"edge": "cf", "from": "neck", "along": "6"},
    "keeps": "waist",
    "new": ["FY", "Front yoke"],
    "edge": "yoke",
}


def taken(room: Room) -> Room:
    assert change(room, {"do": "own steps", "steps": [YOKE]}) is None
    return room


def test_a_step_is_taken_told_and_taken_out(room: Room) -> None:
    assert "FY" in taken(room).paper["pieces"]
    behind = behind_steps(room.reading(Unit.IN))
    (step,) = behind["steps"]
    assert step["step"] == YOKE
    assert "6 in along the cf" in step["say"]
    assert "FY" in {p["code"] for p in behind["pieces"]}
    assert change(room, {"do": "unpick"}) is None
    assert "FY" not in room.paper["pieces"]
    assert change(room, {"do": "again"}) is None
    assert change(room, {"do": "own steps", "steps": []}) is None
    assert "FY" not in room.paper["pieces"]


def test_a_step_that_cannot_be_taken_leaves_all_as_it_was(room: Room) -> None:
    taken(room)
    for wrong in (
        [YOKE, {**YOKE, "new": ["FZ", "Yoke"], "keeps": "collar"}],
        [YOKE, {"do": "glue"}],
        [YOKE, "cut"],
        "cut",
        [YOKE] * 500,
    ):
        refused = change(room, {"do": "own steps", "steps": wrong})
        assert refused is not None
        assert "Error" not in refused.sentence
        assert len(behind_steps(room.reading(Unit.IN))["steps"]) == 1
        assert "FY" in room.paper["pieces"]


def test_steps_kept_under_a_name_serve_the_next_order(book: Book, room: Room) -> None:
    rules = 'unit = "in"\n\n[rules]\nbw = "3 in"  # hers\n'
    book.shelf.put(ShelfItem(HOUSE_RULES, rules))
    taken(room)
    assert change(room, {"do": "name steps", "name": "split front"}) is None
    assert "FY" in room.paper["pieces"]
    house = book.shelf.get(HOUSE_RULES)
    assert house is not None
    assert house.text.startswith(rules.rstrip())  # what she wrote stands
    assert list(named_styles(house.text, "house")) == ["split front"]
    refused = change(room, {"do": "name steps", "name": "split front"})
    assert refused is not None
    words = behind_field(room.reading(Unit.IN), "by hand", "style")
    assert [w["say"] for w in words["words"]] == ["split front"]
    again = Room(InBook(book, book.slips.numbered(1)))
    assert "FY" in again.paper["pieces"]


def test_a_name_is_not_kept_twice(room: Room) -> None:
    taken(room)
    assert change(room, {"do": "name steps", "name": "front"}) is None
    assert change(room, {"do": "own steps", "steps": [YOKE]}) is None
    refused = change(room, {"do": "name steps", "name": "front"})
    assert refused is not None
    assert "another name" in refused.sentence
    refused = change(room, {"do": "name steps", "name": "  "})
    assert refused is not None


def test_inches_kept_beside_rules_in_centimetres(book: Book, room: Room) -> None:
    """A bare length gets its unit, so that the house file's own does not change it."""
    book.shelf.put(ShelfItem(HOUSE_RULES, 'unit = "cm"\n'))
    taken(room)
    assert room.draft is not None
    before = room.draft.sheet.length("FY", "cf")
    assert change(room, {"do": "name steps", "name": "front"}) is None
    assert abs(room.draft.sheet.length("FY", "cf") - before) < 1e-6
    mixed = {**YOKE, "to": {"edge": "cf", "from": "neck", "along": "B/12 + 1"}}
    assert change(room, {"do": "own steps", "steps": [mixed]}) is None
    refused = change(room, {"do": "name steps", "name": "mixed"})
    assert refused is not None
    assert "write in behind the lengths" in refused.sentence

"""Cloth, making and cost of a slip: what a hand does, what is kept, what is said."""

import json
import threading
from collections.abc import Mapping
from typing import Any

import pytest

from clothwright.app.bolt_pages import shown
from clothwright.app.changes import change
from clothwright.app.cloth_words import behind_cloth
from clothwright.app.keeper import Refusal
from clothwright.app.keeping import InBook
from clothwright.app.lying import leaf_name, tried_name
from clothwright.app.room import Room
from clothwright.app.work import Work
from clothwright.app.workshop import made_up
from clothwright.book import RATES, Book, ShelfItem
from clothwright.cost import demo_rates_text
from clothwright.lay import Budget, solve
from clothwright.lay.byhand import Board
from clothwright.lay.kept import write_kept
from clothwright.order import Fold, pattern
from clothwright.units import Unit


@pytest.fixture
def work(book: Book) -> Work:
    """A slip whose shell has a kept lay, lengthwise, so that nothing is searched."""
    keeper = InBook(book, made_up(book, "peplum-top"))
    room = Room(keeper)
    assert room.draft is not None
    board = Board(pattern(room.draft), "shell", Fold.LENGTHWISE)
    first = solve(board.shapes, board.spread, gap=board.gap, budget=Budget(layouts=1))
    text = write_kept(board.laid(first.placed).lay)
    keeper.put_leaf(leaf_name("shell"), text, of_state=True)
    return Work(room)


def hand(work: Work, hand: str, **more: object) -> Refusal | None:
    return work.change({"do": "lay", "hand": hand, "of": "shell", **more})


def lay(work: Work) -> Mapping[str, Any]:
    data = shown(work.bolt, Unit.CM)
    assert data is not None
    assert json.dumps(data)  # a page can be sent it
    return data


def piece(work: Work, code: str) -> int:
    return next(i for i, p in enumerate(lay(work)["pieces"]) if p["code"] == code)


def said(work: Work, name: str) -> str:
    """A paragraph as plain text."""
    told = work.paragraphs(work.room.reading(Unit.CM))[name]
    runs = [r for s in told for r in (*s["runs"], *s["rest"])]
    return "".join(r if isinstance(r, str) else r["say"] for r in runs)


def test_a_kept_lay_lies_there_and_a_faulty_one_is_not_kept(work: Work) -> None:
    assert hand(work, "look") is None
    assert lay(work)["kept"]
    assert lay(work)["seeking"] is None
    i, length = piece(work, "FS"), lay(work)["length"]
    j = piece(work, "BS")
    lying = work.bolt.lying["shell"]
    there = lying.board.middle(lying.laid.lay.placed, j)
    assert hand(work, "move", piece=i, at=list(there)) is None
    faults = lay(work)["pieces"][i]["faults"]
    assert any(f.startswith("overlaps the ") and f.endswith("cm²") for f in faults)
    refused = hand(work, "keep")
    assert refused is not None
    assert "must not be cut" in refused.sentence
    assert "not kept" not in said(work, "Cloth")  # a lay that is none is not told of
    assert hand(work, "back") is None
    assert lay(work)["length"] == length
    assert lay(work)["kept"]
    nothing = hand(work, "back")
    assert nothing is not None
    assert nothing.sentence == "No piece was moved."


def test_a_drag_is_one_move_and_a_good_one_can_be_kept(work: Work) -> None:
    hand(work, "look")
    i = piece(work, "FS")
    for x in (150.0, 180.0, 220.0):
        hand(work, "move", piece=i, at=[x, 30.0], live=True)
    hand(work, "move", piece=i, at=[260.0, 30.0])
    assert lay(work)["moves"] == 1
    assert lay(work)["buy"]["told"] > "2.5 m"
    assert not lay(work)["kept"]
    assert "The lay of the shell is not kept yet" in said(work, "Cloth")
    assert hand(work, "keep") is None
    again = Work(Room(work.room.keeper))
    hand(again, "look")
    assert lay(again)["length"] == lay(work)["length"]


def test_moves_that_are_not_kept_are_there_again(work: Work) -> None:
    """When the app is started anew, faults and all, one move from what is kept."""
    hand(work, "look")
    i, j = piece(work, "FS"), piece(work, "BS")
    lying = work.bolt.lying["shell"]
    there = list(lying.board.middle(lying.laid.lay.placed, j))
    hand(work, "move", piece=i, at=[there[0] + 300, there[1]], live=True)
    assert work.room.keeper.leaf(tried_name("shell")) == "", "a drag is not over yet"
    hand(work, "move", piece=i, at=there)
    left = work.bolt.lying["shell"].laid
    assert left.faults

    again = Work(Room(work.room.keeper))
    hand(again, "look")
    now = again.bolt.lying["shell"].laid
    for a, b in zip(now.lay.placed, left.lay.placed, strict=True):
        assert (a.code, a.turn) == (b.code, b.turn)
        assert (a.x, a.y) == pytest.approx((b.x, b.y), abs=1e-5)
    assert [str(f) for f in now.faults] == [str(f) for f in left.faults]
    assert (lay(again)["kept"], lay(again)["moves"]) == (False, 1)
    assert lay(again)["seeking"] is None
    assert hand(again, "back") is None
    assert lay(again)["kept"]

    third = Work(Room(work.room.keeper))
    hand(third, "look")
    assert (lay(third)["kept"], lay(third)["moves"]) == (True, 0)


def test_moves_are_taken_back_one_by_one_when_the_app_is_opened_next(
    work: Work,
) -> None:
    hand(work, "look")
    i, stood = piece(work, "FS"), []
    for _ in range(3):
        stood.append(work.bolt.lying["shell"].laid.lay.placed[i].x)
        hand(work, "move", piece=i, by=[10, 0])

    again = Work(Room(work.room.keeper))
    hand(again, "look")
    assert lay(again)["moves"] == 3
    hand(again, "back")
    third = Work(Room(again.room.keeper))
    hand(third, "look")
    for left in (2, 1, 0):
        assert lay(third)["moves"] == left
        now = third.bolt.lying["shell"].laid.lay.placed[i].x
        assert now == pytest.approx(stood[left], abs=1e-5)
        assert (hand(third, "back") is None) is (left > 0)
    assert lay(third)["kept"]


def test_faulty_moves_of_another_order_are_not_taken_up(work: Work) -> None:
    hand(work, "look")
    i = piece(work, "FS")
    hand(work, "move", piece=i, by=[-400, 0])
    assert work.bolt.lying["shell"].laid.faults
    op = {"do": "set", "of": "peplum.length", "to": "5 in"}
    assert change(work.room, op) is None
    again = Work(Room(work.room.keeper))
    try:
        hand(again, "look")
        assert "shell" not in again.bolt.lying or not lay(again)["moves"]
    finally:
        again.bolt.close()


def test_a_kept_lay_stands_with_its_state(work: Work) -> None:
    """A lay that was kept for the order as it was before is there again when the change
    is unpicked."""
    room = work.room
    first = room.keeper.leaf(leaf_name("shell"))
    change(room, {"do": "set", "of": "neckline.depth", "to": "3 1/2"})
    room.keeper.put_leaf(leaf_name("shell"), "another = 1", of_state=True)
    assert room.keeper.leaf(leaf_name("shell")) == "another = 1"
    change(room, {"do": "unpick"})
    assert room.keeper.leaf(leaf_name("shell")) == first


def test_a_search_tells_and_is_stopped(work: Work) -> None:
    hand(work, "look")
    done = threading.Event()

    def news() -> None:
        if work.bolt.seeking is None:
            done.set()

    work.bolt.news = news
    before = lay(work)["length"]
    assert hand(work, "find", longer=True) is None
    assert lay(work)["seeking"] == {"share": 0.0}
    refused = hand(work, "keep")
    assert refused is not None
    assert "stop it first" in refused.sentence
    hand(work, "stop")
    assert done.wait(60)
    assert lay(work)["seeking"] is None
    assert lay(work)["length"] <= before + 0.01 or lay(work)["fold"] != "lengthwise"
    assert not any(p["faults"] for p in lay(work)["pieces"])


def test_words_of_a_cloth_change_the_order(work: Work) -> None:
    def change(of: str, **more: object) -> None:
        refused = work.change({"do": "choose", "of": f"cloth:shell.{of}", **more})
        assert refused is None, refused

    work.change({"do": "set", "of": "cloth:shell.width", "cm": 150.0})
    change("nap", to=True)
    change("fold", to="single")
    change("shrink_warp", to="4")
    change("price", to="21,50")
    change("sold_by", to="1/8 yd")
    cloth = work.room.order.cloths["shell"]
    assert cloth.width == pytest.approx(150.0, abs=0.08)  # a sixteenth
    assert (cloth.nap, cloth.fold, cloth.shrink_warp) == (True, Fold.SINGLE, 4)
    assert str(cloth.price) == "21.50"
    told = said(work, "Cloth")
    assert "a nap: all pieces head one way" in told
    assert "in a single layer, right side up" in told
    assert "21.50 a yard, sold by the eighth of a yard" in told
    wrong = work.change({"do": "choose", "of": "cloth:shell.shrink_warp", "to": "40"})
    assert wrong is not None
    assert wrong.sentence == "A cloth shrinks by 0 to 20 in a hundred; write that."


def test_flaws_are_written_in_the_cloth_s_sentence(work: Work) -> None:
    """As in the order's file; the lay goes round them, and blank leaves them out."""
    of = "cloth:shell.flaws"
    assert "no flaw to lie around" in said(work, "Cloth")
    hand(work, "look")
    text = "3 by 2 at 80 and 20; 1/2 in by 1/2 in at 12 in and 4 1/4 in"
    op = {"do": "choose", "of": of, "to": text, "unit": "cm"}
    assert work.change(op) is None
    flaws = [
        (f.length, f.width, f.along, f.across)
        for f in work.room.order.cloths["shell"].flaws
    ]
    assert flaws[0] == pytest.approx((3, 2, 80, 20))
    assert flaws[1] == pytest.approx((1.27, 1.27, 30.48, 10.795), abs=0.05)
    told = "a flaw of 3.0 cm by 2.0 cm, 80.0 cm from the cut end and 20.0 cm from the"
    assert told in said(work, "Cloth")
    assert lay(work)["pieces"] and len(lay(work)["flaws"]) >= 2
    behind = behind_cloth(work.room.reading(Unit.CM), work.room.order.cloths, of)
    again = {"do": "choose", "of": of, "to": behind["typed"], "unit": "cm"}
    assert work.change(again) is None, "what is offered can be written back"
    for wrong in ("3 by 2", "here", "3 by two at 80 and 20", "3 by 0 at 80 and 20"):
        refused = work.change({**op, "to": wrong})
        assert refused is not None and refused.sentence.endswith(".")
    assert work.change({**op, "to": ""}) is None
    assert work.room.order.cloths["shell"].flaws == ()
    work.bolt.close()


def test_a_flaw_pointed_at_is_typed_for_her(work: Work) -> None:
    """What a page is told makes a flaw that lies where she drew it."""
    hand(work, "look")
    d = lay(work)
    assert d["flaws_typed"] == ""
    along, across = 30.0 + d["buy"]["lost"], d["near_edge"] + 5.0
    text = f"3.00 by 2.00 at {along:.2f} and {across:.2f}"
    op = {"do": "choose", "of": "cloth:shell.flaws", "to": text, "unit": "cm"}
    assert work.change(op) is None
    again = lay(work)
    assert again["flaws"] == [pytest.approx([30.0, 5.0, 33.0, 7.0], abs=0.06)]
    assert again["flaws_typed"].startswith("3.0 cm by 2.0 cm at ")
    work.bolt.close()


def test_ticks_are_kept(work: Work) -> None:
    ops = [op for p in work.making_data()["order"]["parts"] for op in p["operations"]]
    assert not any(op["done"] for op in ops)
    title = ops[3]["title"]
    assert work.change({"do": "tick", "of": title, "to": True}) is None
    again = Work(Room(work.room.keeper))
    assert again.ticked() == {title}
    assert said(again, "Making").endswith("one done.")
    again.change({"do": "tick", "of": title, "to": False})
    assert again.ticked() == set()
    refused = again.change({"do": "tick", "of": "Sing a song", "to": True})
    assert refused is not None


def test_the_cost_waits_for_cloth_and_follows_her_words(work: Work, book: Book) -> None:
    assert work.cost_data()["missing"] == ["lining", "interlining"]

    def choose(of: str, to: object) -> Refusal | None:
        return work.change({"do": "choose", "of": f"cost:{of}", "to": to})

    assert choose("cloth.lining", "0.3") is None
    assert choose("cloth.interlining", "0,6 m") is None
    data = work.cost_data()
    assert data["invented"]
    shell = data["rows"][0]["lines"][0]
    metres = lay_metres(work)
    assert shell["cells"][1] == f"{metres} m"
    assert work.comes.startswith("It comes to ")
    plain = work.comes
    assert choose("fittings", "3") is None
    work.cost_data()
    assert work.comes != plain
    assert choose("own_cloth", True) is None
    assert work.cost_data()["rows"][0]["name"] == "Notions"
    choose("own_cloth", False)
    assert choose("minutes.loop", "140") is None
    work.change({"do": "choose", "of": "cost:change", "what": "longer", "price": "12"})
    came = {w: a for w, a, _ in work.cost_data()["came"]}
    assert came["change: longer"] == "12.00"
    wrong = choose("discount", "140")
    assert wrong is not None
    assert "write a number from 0 to 100" in wrong.sentence
    own = demo_rates_text().replace("hour = 27.00", "hour = 54.00")
    book.shelf.put(ShelfItem(RATES, own))
    data = work.cost_data()
    assert not data["invented"]
    assert "54.00 an hour" in json.dumps(data["rows"])


def lay_metres(work: Work) -> str:
    laid = work.bolt.amount("shell")
    assert laid is not None
    return laid.lay.buy.told.removesuffix(" m")

"""The slip: what it says, and who wrote it."""

from typing import Any

from clothwright.app.behind import behind_field, why
from clothwright.app.changes import change
from clothwright.app.cloth_words import bought_sentence, cloth_sentences
from clothwright.app.keeping import InBook
from clothwright.app.offers import shelf
from clothwright.app.room import Room
from clothwright.app.table import Table
from clothwright.app.words import paragraphs
from clothwright.app.workshop import made_up
from clothwright.app.writing import understood
from clothwright.book import Book
from clothwright.features import KINDS
from clothwright.units import Unit


def told(room: Room, unit: Unit = Unit.IN) -> dict[str, list[dict[str, Any]]]:
    return paragraphs(room.reading(unit))


def text(sentence: dict[str, Any], part: str = "runs") -> str:
    return "".join(r if isinstance(r, str) else r["say"] for r in sentence[part])


def words(sentences: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    return {
        r["of"]: r
        for s in sentences
        for part in ("runs", "rest")
        for r in s[part]
        if not isinstance(r, str)
    }


def test_the_order_reads_as_sentences(room: Room) -> None:
    style = {s["id"]: text(s) for s in told(room)["Style"]}
    assert style["neckline"] == (
        "A boat neck, 3 1/8 in deep in front and 2 5/16 in wider than the standard."
    )
    assert style["peplum"] == (
        "The peplum is flared, 6 in long and half of a full circle; it ends at the "
        "edges."
    )


def test_a_skirt_reads_and_lies_on_the_table(book: Book) -> None:
    """An order without a bodice: its sentences, what it lacks when its zip is left off,
    its pieces side by side."""
    room = Room(InBook(book, made_up(book, "straight-skirt")))
    style = {s["id"]: text(s) for s in told(room, Unit.CM)["Style"]}
    assert style["straight skirt"] == (
        "A straight skirt, 60.0 cm long from the waist, with 4.0 cm of ease at the hip "
        "and 2.0 cm at the waist."
    )
    assert style["vent"].startswith("The centre back seam ends in a vent, 18.0 cm high")
    assert room.draft is not None
    laid = Table().lay(room.draft)
    assert laid["places"]["SB"][0] < laid["places"]["SF"][0]
    change(room, {"do": "leave", "kind": "skirt zip"})
    said = [text(s) for s in told(room, Unit.CM)["Style"]]
    assert any("must open" in s and "Add the skirt zip" in s for s in said)


def test_a_knit_top_reads_and_lies_on_the_table(book: Book) -> None:
    room = Room(InBook(book, made_up(book, "knit-top")))
    style = {s["id"]: text(s) for s in told(room, Unit.CM)["Style"]}
    assert style["knit bodice"] == (
        "A knit bodice of a cloth that stretches 50 per cent and comes back by 95, "
        "with -6 per cent of ease at the bust; it reaches 20.0 cm below the waist."
    )
    assert room.draft is not None
    laid = Table().lay(room.draft)
    assert laid["places"].keys() == {"KF", "KB", "KS", "KN"}
    change(room, {"do": "leave", "kind": "neck band"})
    said = [text(s) for s in told(room, Unit.CM)["Style"]]
    assert any("not finished" in s and "Add the neck band" in s for s in said)


def test_trousers_read_and_lie_on_the_table(book: Book) -> None:
    room = Room(InBook(book, made_up(book, "trousers")))
    style = {s["id"]: text(s) for s in told(room, Unit.CM)["Style"]}
    assert style["trousers"] == (
        "Trousers with 5.0 cm of ease at the hip and 1.2 cm in the rise, 44.0 cm wide "
        "at the knee and 40.0 cm at the hem."
    )
    assert style["fly"] == (
        "They close with a fly in the centre front, 17.0 cm long and 4.5 cm wide."
    )
    assert room.draft is not None
    laid = Table().lay(room.draft)
    back, front = (
        laid["places"][c][0] + 10 * room.draft.sheet.piece(c).outline.bounds()[0]
        for c in ("TB", "TF")
    )
    assert back < front
    change(room, {"do": "leave", "kind": "fly"})
    said = [text(s) for s in told(room, Unit.CM)["Style"]]
    assert any("must open" in s and "Add the fly" in s for s in said)


def test_every_feature_tells_its_name_and_at_most_four_live_words() -> None:
    for f in KINDS.values():
        assert f.sentence.count("[") == f.sentence.count("]") == 1, f.title
        assert f.sentence.count("{") <= 4, f.title


def test_hands_are_told_apart(room: Room) -> None:
    word = words(told(room)["Style"])
    assert word["neckline.depth"]["pen"] == "ink"
    assert word["neckline.width"]["pen"] == "pencil"
    change(room, {"do": "baste"})
    change(room, {"do": "set", "of": "neckline.width", "to": "2"})
    assert words(told(room)["Style"])["neckline.width"]["pen"] == "thread"
    change(room, {"do": "stitch"})
    assert words(told(room)["Style"])["neckline.width"]["pen"] == "ink"
    change(room, {"do": "rule", "of": "neckline.width"})
    assert words(told(room)["Style"])["neckline.width"]["pen"] == "pencil"


def test_a_slip_reads_in_centimetres_too(room: Room) -> None:
    style = {s["id"]: text(s) for s in told(room, Unit.CM)["Style"]}
    assert "15.2 cm long" in style["peplum"]  # 6 in


def test_a_missing_measure_is_estimated_and_said(room: Room) -> None:
    del room.now["measures"]["AG"]
    change(room, {"do": "set", "of": "peplum.length", "to": "6"})
    first, sentence = told(room)["Measures"][:2]
    assert sentence["id"] == "estimates"
    assert "armscye" in text(sentence)
    assert text(first).endswith(" 30 more; 1 is estimated.")
    assert sentence["runs"][1]["pen"] == "guess"


def test_what_cannot_go_together_is_said_with_the_ways_out(room: Room) -> None:
    change(room, {"do": "leave", "kind": "loops"})
    style = {s["id"]: s for s in told(room)["Style"]}
    said = style["low open back"]["said"][0]
    assert text({"runs": said}) == (
        "Its edges need loops, or another way to close. Add the loops or Add the "
        "concealed zip or Leave off the low open back."
    ) or "Add the loops" in text({"runs": said})
    way = next(r for r in said if not isinstance(r, str))
    assert way["do"] == {"do": "add", "kind": "loops"}
    change(room, way["do"])
    assert all(not s["said"] for s in told(room)["Style"])


def test_seams_are_told_one_by_one(room: Room) -> None:
    seams = told(room)["Seams"]
    assert text(seams[0]) == f"All {len(seams) - 1} seams meet."
    assert text(seams[1]).startswith("Front panel: 12 15/16 and 13 1/16 in")


def test_the_tape_knows_bounds_rule_and_hand(room: Room) -> None:
    behind = behind_field(room.reading(Unit.IN), "neckline", "width")
    assert behind["opens"] == "tape" and not behind["hers"]
    assert behind["low"] <= behind["value"] <= behind["high"]
    change(room, {"do": "set", "of": "neckline.width", "to": "2"})
    behind = behind_field(room.reading(Unit.IN), "neckline", "width")
    assert behind["hers"] and abs(behind["value"] - 5.08) < 1e-6
    assert behind["rule"]["say"] == "2 5/16 in"


def test_why_follows_an_edge_to_the_tape(room: Room) -> None:
    for of in ("FC.panel", "FC.neck", "BC.slant", "PF.hem", "FF.free", "fd", "Nf′"):
        knots = why(room.reading(Unit.IN), of)["knots"]
        assert 1 <= len(knots) <= 6, of
    knots = {k["knot"] for k in why(room.reading(Unit.IN), "fd")["knots"]}
    assert knots == {"ruler", "tape"}


def test_the_writing_line_understands_what_is_on_the_shelf(room: Room) -> None:
    r = room.reading(Unit.IN)
    assert understood(r, "boat neck 2 7/8")["do"] == [
        {"do": "choose", "of": "neckline.shape", "to": "boat"},
        {"do": "set", "of": "neckline.depth", "to": "2 7/8 in"},
    ]
    assert understood(r, "lining")["do"] == [
        {"do": "add", "kind": "lining", "with": {}}
    ]
    assert "do" not in understood(r, "epaulettes")
    half = understood(r, "sle")
    assert half["say"] == "Is it one of these?"
    assert all("sle" in o["say"] for o in half["offers"][:4])
    assert "do" not in understood(r, "boat neck with feathers")
    assert "do" not in understood(r, "peplum 7 8 9 10 11 12")
    assert "already" in understood(r, "low open back")["say"]
    assert understood(r, "6 in")["say"] == "That is not on the shelf."


def test_the_writing_line_asks_where_several_are_meant(room: Room) -> None:
    r = room.reading(Unit.IN)
    asked = understood(r, "jetted pocket")
    assert "do" not in asked
    assert asked["say"] == "Which of these?"
    pockets = {o["kind"] for o in asked["offers"]}
    assert {"set pocket", "top pocket", "breast pocket", "back pocket"} <= pockets
    given = {o["kind"]: o["with"] for o in asked["offers"]}
    assert given["set pocket"] == given["back pocket"] == {"shape": "jetted"}
    assert "do" not in understood(r, "pockets 2")  # not 2 in of something
    assert "do" not in understood(r, "sleeve")


def test_the_writing_line_knows_what_things_are_called_elsewhere(room: Room) -> None:
    r = room.reading(Unit.IN)
    for said, kind in (
        ("peter pan collar", "flat collar"),
        ("pants", "trousers"),
        ("long sleeves", "set-in sleeve"),
        ("puff sleeves", "puffed cap"),
    ):
        assert understood(r, said)["do"][0]["kind"] == kind
    zips = {o["kind"] for o in understood(r, "zipper")["offers"]}
    assert {"concealed zip", "underarm zip", "skirt zip", "fly"} <= zips
    assert understood(r, "sweetheart")["do"] == [
        {"do": "choose", "of": "neckline.shape", "to": "sweetheart"}
    ]


def test_the_writing_line_takes_the_one_that_fits(book: Book) -> None:
    """Of all that are called pleats, trousers take only those of their front."""
    r = Room(InBook(book, made_up(book, "trousers"))).reading(Unit.CM)
    assert understood(r, "pleats")["do"][0]["kind"] == "front pleats"


def test_what_does_not_go_with_the_slip_is_said_where_it_is_chosen(room: Room) -> None:
    r = room.reading(Unit.IN)
    assert understood(r, "lacing")["but"].startswith("Not with the loops: ")
    on = {o["kind"]: o for part in shelf(r.features).values() for o in part}
    assert set(on) == set(KINDS) - {f.kind for f in r.features}
    assert on["dress skirt"]["against"].startswith("Not with the peplum: ")
    assert on["fly"]["against"] == "Asks for trousers, which does not go with the rest."
    assert on["cuff"]["asks"] == "Asks for set-in sleeve."
    assert not {"against", "asks"} & on["lining"].keys()
    first = [
        bool(o.get("against")) for o in shelf(r.features)["Open backs and closings"]
    ]
    assert first == sorted(first)


def test_lays_that_are_not_kept_are_listed() -> None:
    buys = {"shell": "1.1 m", "lining": "0.5 m", "interlining": "0.6 m"}
    for loose, says in (
        (["shell"], "The lay of the shell is not kept yet."),
        (list(buys), "of the shell, the lining and the interlining is not kept yet."),
    ):
        (sentence,) = bought_sentence(buys, loose)
        assert says in "".join(map(str, sentence.runs))


def test_a_cloth_of_unknown_width_is_told(room: Room) -> None:
    told = [
        "".join(x if isinstance(x, str) else x.say for x in s.runs)
        for s in cloth_sentences(room.reading(Unit.CM), {})
    ]
    assert "The shell is not written down, its width not known, laid" in told[0]

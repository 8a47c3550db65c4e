"""Bad orders and measures: one plain sentence with the place, and nothing written.

Each case changes one thing in a good order, and says what the sentence must name.
"""

import re
from collections.abc import Callable
from importlib import resources
from pathlib import Path

import pytest
from typer.testing import CliRunner

from clothwright.cli import app
from clothwright.order import OrderError, draft, read_order

DEMO = resources.files("clothwright.demo")
CLOTHED = DEMO.joinpath("peplum-top.toml").read_text("utf8")
_CLOTHS = re.compile(r"\n\[cloths.*?(?=\n\[\[feature)", re.DOTALL)
ORDER = _CLOTHS.sub('cloth = "ink crêpe"\n', CLOTHED)  # told the short way
SLEEVED = DEMO.joinpath("sleeved-top.toml").read_text("utf8")
BODY = DEMO.joinpath("brida.toml").read_text("utf8")

Case = tuple[str, str, str]
"""What is changed, into what, and what the sentence must say."""

ORDERS: dict[str, Case] = {
    "no unit": ('unit = "in"\n', "", "unit"),
    "unknown unit": ('unit = "in"', 'unit = "ell"', "ell"),
    "misspelt key": ("garment =", "garmet =", "did you mean garment?"),
    "another word for a key": ("garment =", "title =", "did you mean garment?"),
    "a cloth by another word": (
        'cloth = "ink crêpe"',
        'fabric = "ink crêpe"',
        "did you mean cloth or cloths?",
    ),
    "a feature as a table": (
        'cloth = "ink crêpe"',
        'neckline = "boat"',
        'write it as a [[feature]] with kind = "neckline"',
    ),
    "a cloth as a table": (
        'cloth = "ink crêpe"',
        'cloth = { name = "crêpe", width = 54 }',
        "stand under [cloths.shell]",
    ),
    "figures without end": ("fullness = 0.5", "fullness = " + "9" * 5000, "figures"),
    "brackets without end": ("garment =", "x = " + "[" * 5000 + "\ngarment =", "deep"),
    "a garment as long as a book": ('garment = "', 'garment = "' + "x" * 999, "300"),
    "a kind in a list": ('kind = "loops"', 'kind = ["loops"]', "in quotes"),
    "no measures": ('measures = "brida.toml"', "", "measures"),
    "measures elsewhere": ('"brida.toml"', '"bride.toml"', "bride.toml"),
    "house elsewhere": ('cloth = "ink crêpe"', 'house = "none.toml"', "none.toml"),
    "estimates unknown": ('cloth = "ink crêpe"', 'estimates = "guess"', "handbook"),
    "a name that no file has": ('"brida.toml"', '"br\\u0000ida.toml"', "name"),
    "estimates in a list": ('cloth = "ink crêpe"', 'estimates = ["survey"]', "survey"),
    "fullness in words": ("fullness = 0.5", 'fullness = "half"', "number"),
    "yes for a ratio": ("fullness = 0.5", "fullness = true", "fraction"),
    "nap in quotes": ('cloth = "ink crêpe"', 'nap = "yes"', "nap"),
    "cloth in a list": ('cloth = "ink crêpe"', "cloth_width = [54]", "cloth_width"),
    "cloth of no width": ('cloth = "ink crêpe"', "cloth_width = 0", "out of reach"),
    "cloth in ells": ('cloth = "ink crêpe"', 'cloth_width = "1 ell"', "unit"),
    "broken line": ("[[feature]]", "[[feature]", "line"),
    "unknown feature": ('kind = "loops"', 'kind = "lops"', 'did you mean "loops"?'),
    "a feature by another word": (
        'kind = "loops"',
        'kind = "peter pan collar"',
        'did you mean "flat collar"? `clothwright features` lists them all',
    ),
    "a feature like no other": (
        'kind = "loops"',
        'kind = "sundial"',
        "'sundial'; `clothwright features` lists them all",
    ),
    "no kind": ('kind = "loops"\n', "", "kind"),
    "unknown setting": ("spacing = 1", "spacng = 1", "spacing"),
    "unknown shape": ('shape = "boat"', 'shape = "bote"', "boat"),
    "blank length": ('depth = "3 1/8"', 'depth = ""', "blank"),
    "no number": ('depth = "3 1/8"', 'depth = "deep"', "deep"),
    "fraction by nought": ('depth = "3 1/8"', 'depth = "3 1/0"', "nought"),
    "yes for a length": ("spacing = 1", "spacing = true", "spacing"),
    "not a number": ("spacing = 1", "spacing = nan", "number"),
    "infinite": ("spacing = 1", "spacing = inf", "number"),
    "wrong unit word": ('depth = "3 1/8"', 'depth = "3 1/8 el"', "unit"),
    "neck too deep": ('depth = "3 1/8"', 'depth = "15"', "reach"),
    "neck below the bust": ('depth = "3 1/8"', 'depth = "11 1/2"', "N1"),
    "neck too shallow": ('depth = "3 1/8"', 'depth = "1 1/4"', "shallow"),
    "no shoulder left": (
        'shape = "boat"',
        'shape = "boat"\nwidth = "4 1/4"',
        "shoulder",
    ),
    "tightening too strong": ('front = "1/2"', 'front = "1 1/8"', "N4"),
    "negative tightening": ('front = "1/2"', 'front = "-1/2"', "reach"),
    "back absurdly low": ("\ndepth = 6\n", "\ndepth = 30\n", "reach"),
    "set-in past the neck": ("\ntop = 2\n", '\ntop = "3 1/2"\n', "panel"),
    "set-in leaves no back": ("\nwaist = 1\n", '\nwaist = "2 1/4"\n', "wide"),
    "peplum of no length": ("\nlength = 6\n", "\nlength = 0\n", "reach"),
    "peplum of no fullness": ("fullness = 0.5", "fullness = 0", "reach"),
    "too much ease over the bust": ('ease = "1/8"', 'ease = "1/2"', "reach"),
    "negative ease": ("bust_ease = 2", "bust_ease = -2", "reach"),
    "panel beyond its seam": ('overlap = "3/4"', 'overlap = "2"', "overlap"),
    "button too small": ('button = "7/16"', 'button = "0.1"', "reach"),
    "zip in an open back": (
        'kind = "waist seam"',
        'kind = "waist seam"\n\n[[feature]]\nkind = "concealed zip"',
        "does not go with",
    ),
    "two necklines behind": (
        'kind = "waist seam"',
        'kind = "waist seam"\n\n[[feature]]\nkind = "back neckline"',
        "neckline",
    ),
    "two places for the bust dart": (
        'kind = "waist seam"',
        'kind = "waist seam"\n\n[[feature]]\nkind = "side dart"',
        "bust dart",
    ),
    "twice the same": (
        'kind = "waist seam"',
        'kind = "waist seam"\n\n[[feature]]\nkind = "waist seam"',
        "twice",
    ),
    "open back without a closure": (
        'kind = "loops"\nspacing = 1\nbutton = "7/16"',
        'kind = "lining"',
        "loops",
    ),
    "no waist seam": ('[[feature]]\nkind = "waist seam"\n', "", "waist seam"),
    "no block": (
        'kind = "bodice block"\nbust_ease = 2\nwaist_ease = 1\ndepth = "by the scale"',
        'kind = "lining"',
        "block",
    ),
}
CLOTHS: dict[str, Case] = {
    "width said twice": ('number = "1"', "cloth_width = 54", "say the same"),
    "a cloth of no name": ("[cloths.lining]", "[cloths.linning]", "did you mean lin"),
    "a cloth like no other": ("[cloths.lining]", "[cloths.moon]", "the cloths are sh"),
    "a name that is none": ('name = "Heron lining"', "name = 3", "words, in quotes"),
    "no table": ('[cloths.lining]\nname = "Heron lining"', "cloths.lining = 3", "each"),
    "misspelt setting": ('width = "140 cm"', 'widht = "140 cm"', "width"),
    "no width of cloth": ('width = "140 cm"', 'width = "4 m 10"', "width"),
    "too wide": ('width = "140 cm"', 'width = "14 m"', "out of reach"),
    "all selvedge": ('selvedge = "1 cm"', 'selvedge = "70 cm"', "selvedge"),
    "shrinks away": ("shrink_warp = 3", "shrink_warp = 100", "percent"),
    "shrinks in words": ("shrink_warp = 3", 'shrink_warp = "much"', "shrink_warp"),
    "grows": ("shrink_weft = 2", "shrink_weft = -2", "out of reach"),
    "steamed perhaps": ("steamed = true", 'steamed = "perhaps"', "without quotes"),
    "no price": ('price = "18.40"', 'price = "dear"', "18.40"),
    "price below nought": ('price = "18.40"', 'price = "-3"', "18.40"),
    "sold by the ell": ('sold_by = "0.1 m"', 'sold_by = "ell"', "0.25 m"),
    "folded thrice": ("steamed = true", 'fold = "thrice"', "lengthwise"),
    "nap folded across": (
        "steamed = true",
        'nap = true\nfold = "across"',
        "lengthwise",
    ),
    "no stripes": ("steamed = true", "repeat_warp = 0", "out of reach"),
    "half a flaw": (
        "steamed = true",
        "flaws = [{ along = 3, across = 2, length = 1 }]",
        "flaws 1: width is missing",
    ),
    "flaw of no size": (
        "steamed = true",
        "flaws = [{ along = 3, across = 2, length = 0, width = 1 }]",
        "out of reach",
    ),
}
SLEEVES: dict[str, Case] = {
    "cap sleeve": ("length = 21", "length = 18", "set length to"),
    "longer than any arm": ("length = 21", "length = 90", "reach"),
    "cap tighter than the armhole": ("cap_ease = 3", "cap_ease = -1", "reach"),
    "no ease for the arm": ("arm_ease = 5", "arm_ease = 0", "reach"),
    "a shoulder narrowed": (
        'kind = "sleeved armhole"',
        'kind = "sleeved armhole"\nnarrowed = 1',
        "narrowed",
    ),
    "sleeveless with a sleeve": (
        'kind = "sleeved armhole"',
        'kind = "sleeveless armhole"',
        "sleeved armhole",
    ),
    "both armholes": (
        'kind = "sleeved armhole"',
        'kind = "sleeved armhole"\n\n[[feature]]\nkind = "sleeveless armhole"',
        "one kind of armhole",
    ),
    "no sleeve": (
        'kind = "set-in sleeve"\nlength = 21\narm_ease = 5\ncap_ease = 3',
        'kind = "tightening"',
        "set-in sleeve",
    ),
    "faced in one": ('kind = "neck facing"', 'kind = "facing"', "neck facing"),
    "lined to the edge": (
        'kind = "neck facing"',
        'kind = "lining"\nmode = "to the edge"',
        "sleeveless",
    ),
    "a full cap lined": (
        'kind = "neck facing"',
        'kind = "neck facing"\n\n[[feature]]\nkind = "lining"\n\n'
        '[[feature]]\nkind = "puffed cap"',
        "a full cap is not lined yet",
    ),
    "no shoulder for the sleeve": (
        'shape = "round"',
        'shape = "round"\nwidth = 10',
        "A3",
    ),
    "a dart in the back shoulder": (
        "waist_ease = 3",
        "waist_ease = 3\nback_shoulder_dart = 1.2",
        "back_shoulder_dart",
    ),
    "an open back": (
        'kind = "concealed zip"',
        'kind = "low open back"',
        "slanted edges",
    ),
}
BODIES: dict[str, Case] = {
    "inches taken for cm": ('unit = "in"', 'unit = "cm"', "centimetres are exchanged"),
    "cm taken for inches": ('W = "29"', 'W = "74"', 'or write "74 cm"'),
    "misspelt table": ("[measures]", "[measure]", "did you mean measures?"),
    "misspelt client": ("client =", "cleint =", "did you mean client?"),
    "blank measure": ('B = "36 1/2"', 'B = ""', "blank"),
    "nought": ('W = "29"', "W = 0", "measure"),
    "negative": ('W = "29"', "W = -29", "W: -29 cannot be a measure"),
    "name on two lines": ('"Brida Hollin"', '"Brida\\nHollin"', "line break"),
    "not a number": ('W = "29"', "W = nan", "number"),
    "absurd": ('SH = "5"', 'SH = "50"', "SH"),
    "unknown measure": ('SH = "5"', 'SHX = "5"', "SHX"),
    "drop over the length": ("drop 1 7/8 on 5", "drop 6 on 5", "drop"),
    "unreadable slope": ("drop 1 7/8 on 5", "drop 1 7/8", "write degrees, like 21.5"),
    "bust missing": ('B = "36 1/2"\n', "", "B is missing"),
    "waist missing": ('W = "29"\n', "", "W is missing"),
    "bust point in the armhole": ('NBP = "10 5/8"', 'NBP = "7"', "NBP"),
    "forearm over upper arm": ('FA = "10"', 'FA = "12 1/2"', "FA"),
    "no measures at all": ("[measures]", "[measurs]", "measures"),
    "date in words": ("taken = 2027-02-06", 'taken = "in spring"', "date"),
}
HOUSES = {
    "unknown rule": ('Dx = "B/6"', "Dx"),
    "unknown measure": ('Dm = "BX/6 + 1 in"', "BX"),
    "open bracket": ('Dm = "(B/6 + 1 in"', "bracket"),
    "blank": ('Dm = ""', "blank"),
    "words": ('Dm = "bust by six"', "bust"),
    "by nought": ('Dm = "B/0"', "nought"),
    "program text": ('Dm = "__import__(1)"', "__import__"),
    "ring": ('bw = "nr * 3"\nnr = "bw / 3"', "each need the other"),
    "too deep": ('Dm = "B + 1 in"', "stands with 3⅛ in to 11¹³⁄₁₆ in"),  # 8 to 30 cm
    "itself": ('Dm = "Dm + 1 in"', "the rule Dm needs itself"),
    "stands twice": ('Dm = "7"\nDm = "8"', "for the second time"),
    "far too many figures": ("Dm = " + "9" * 5000, "figures"),
    "brackets without end": ("x = " + "[" * 5000, "brackets are too deep"),
    "hanging operator": ('Dm = "B/6 +"', "ends"),
    "yes": ("Dm = true", "Dm"),
    "feature's bound": ('ff_side = "40 cm"', "draft stands"),
    "loops on one spot": ('spacing = "0 cm"', "draft stands"),
    "half a loop": ("n_loops = 2.5", "whole number"),
    "no rows": ("rows = 0", "draft stands"),
    "bust point in the neck": ('y_BP = "1 in"', "draft stands"),
}


def write_order(folder: Path, order: str, body: str, house: str = "") -> Path:
    (folder / "brida.toml").write_text(body, "utf8")
    if house:
        (folder / "house.toml").write_text(house, "utf8")
        order = order.replace('cloth = "ink crêpe"', 'house = "house.toml"')
    (folder / "top.toml").write_text(order, "utf8")
    return folder / "top.toml"


def sentences(path: Path) -> str:
    """Everything said about an order: the refusal, or the failed checks."""
    try:
        made = draft(read_order(path))
    except OrderError as e:
        return str(e)
    faults = [f"{f.code}: {f}" for f in made.findings if f.severity.value == "E"]
    assert faults, "a bad order was drafted without a word"
    return "\n".join(faults)


def plain(text: str) -> None:
    for line in text.splitlines():
        assert line.strip()
        assert "Traceback" not in line
        assert "Error" not in line
        assert "None" not in line


def once(text: str, old: str, new: str) -> str:
    assert old in text
    return text.replace(old, new, 1)


def bad_order(folder: Path, old: str, new: str) -> Path:
    return write_order(folder, once(ORDER, old, new), BODY)


def bad_cloth(folder: Path, old: str, new: str) -> Path:
    return write_order(folder, once(CLOTHED, old, new), BODY)


def bad_sleeve(folder: Path, old: str, new: str) -> Path:
    (folder / "ysolde.toml").write_bytes(DEMO.joinpath("ysolde.toml").read_bytes())
    return write_order(folder, once(SLEEVED, old, new), BODY)


def bad_body(folder: Path, old: str, new: str) -> Path:
    return write_order(folder, ORDER, once(BODY, old, new))


def bad_house(folder: Path, old: str, new: str) -> Path:
    return write_order(folder, ORDER, BODY, once(HOUSE, old, new))


HOUSE = 'unit = "in"\n[rules]\n'
CASES: tuple[tuple[Callable[[Path, str, str], Path], dict[str, Case]], ...] = (
    (bad_order, ORDERS),
    (bad_cloth, CLOTHS),
    (bad_sleeve, SLEEVES),
    (bad_body, BODIES),
    (bad_house, {k: (HOUSE, f"{HOUSE}{v[0]}\n", v[1]) for k, v in HOUSES.items()}),
)


@pytest.mark.parametrize(
    ("write", "case"),
    [
        pytest.param(write, case, id=f"{write.__name__}-{name}")
        for write, table in CASES
        for name, case in table.items()
    ],
)
def test_bad_input(
    write: Callable[[Path, str, str], Path], case: Case, tmp_path: Path
) -> None:
    old, new, names = case
    said = sentences(write(tmp_path, old, new))
    plain(said)
    assert names in said
    if write is bad_house:
        assert "house.toml" in said


def test_a_house_rule_that_is_outranked_is_named(tmp_path: Path) -> None:
    house = 'unit = "in"\n[rules]\nSH = "4 in"\n'
    made = draft(read_order(write_order(tmp_path, ORDER, BODY, house)))
    (said,) = [str(f) for f in made.findings if f.code == "H1"]
    assert "house.toml" in said
    assert "SH" in said
    assert "measures" in said


@pytest.mark.parametrize("written", ["0.5", '"1/2"', '"0,5"', '"½"'])
def test_ways_to_write_a_ratio(written: str, tmp_path: Path) -> None:
    text = ORDER.replace("fullness = 0.5", f"fullness = {written}")
    assert draft(read_order(write_order(tmp_path, text, BODY))).numbers.f == 0.5


def test_a_house_rule_of_another_kind_is_said(tmp_path: Path) -> None:
    """An angle in the place of a depth: no draft, and what is wanted."""
    (tmp_path / "house.toml").write_text('unit = "cm"\n[rules]\nDm = "SS"\n')
    order = write_order(tmp_path, 'house = "house.toml"\n' + ORDER, BODY)
    assert "house.toml, Dm: the formula comes to an angle, and a length" in (
        sentences(order)
    )


def test_an_unknown_unit_is_told_alone(tmp_path: Path) -> None:
    """Lengths are not judged in a unit that she did not mean."""
    said = sentences(write_order(tmp_path, ORDER.replace('"in"', '"ell"', 1), BODY))
    assert len(said.splitlines()) == 1


@pytest.mark.parametrize(("typed", "code"), [("36 in", 0), ("wide", 2), ("3 m", 5)])
def test_a_roll_s_width_is_a_length(typed: str, code: int, tmp_path: Path) -> None:
    path = write_order(tmp_path, ORDER, BODY)
    ask = ["make", str(path), "--paper", "roll", "--only", "pdf", "--roll", typed]
    assert CliRunner().invoke(app, ask).exit_code == code

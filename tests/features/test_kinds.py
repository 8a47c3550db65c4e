"""The list of features: each under its own kind, and read when it is named."""

import re
import subprocess
import sys

import pytest

from clothwright.features import KINDS
from clothwright.features.parts import by_part, part_of


@pytest.mark.parametrize("kind", KINDS)
def test_a_feature_stands_under_its_kind(kind: str) -> None:
    assert KINDS[kind].model_fields["kind"].default == kind
    assert KINDS[kind].title


@pytest.mark.parametrize(
    ("kind", "word"),
    [
        ("torso", "dress opening"),
        ("dress skirt", "dress opening"),
        ("straight dress skirt", "centre back zip"),
        ("gored dress skirt", "dress opening"),
        ("pleated dress skirt", "centre back zip"),
        ("elastic waist", "gathered waist"),
        ("wrap skirt", "fitted skirt"),
    ],
)
def test_what_is_missing_is_told_as_it_is_written(kind: str, word: str) -> None:
    """A sentence names kinds that give what is wanted, in the quotes of an order."""
    named = [k for k in re.findall(r'"([^"]+)"', KINDS[kind].needs[word]) if k in KINDS]
    assert named
    given = [k for k in named if word in KINDS[k].gives]
    assert given, named


def test_no_such_kind() -> None:
    assert "hood" not in KINDS
    with pytest.raises(KeyError):
        KINDS["hood"]


def test_only_the_features_of_an_order_are_read() -> None:
    code = (
        "import sys\n"
        "from importlib import resources\n"
        "from clothwright.order import draft, read_order\n"
        "with resources.as_file(resources.files('clothwright.demo')) as folder:\n"
        "    draft(read_order(folder / 'peplum-top.toml'))\n"
        "print([m for m in ('skirts.peplum', 'linings.lining', 'hand.by_hand', "
        "'fitting', 'sleeves.cuff') if f'clothwright.features.{m}' in sys.modules])"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "['skirts.peplum']"


def test_every_kind_is_listed_once_under_a_part_of_the_garment() -> None:
    listed = by_part()
    assert sorted(k for kinds in listed.values() for k in kinds) == sorted(KINDS)
    assert all(listed.values())
    assert part_of("jabot") == "Collars and frills"

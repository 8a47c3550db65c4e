"""Names that are not known lead to one that is."""

import pytest

from clothwright.features import KINDS
from clothwright.features.called import CALLED, which_feature
from clothwright.units import did_you_mean, nearest


@pytest.mark.parametrize(
    ("said", "near"),
    [
        ("lenght", ("length",)),  # two letters changed places
        ("Width", ("width",)),
        ("lop", ("loop",)),
        ("zip at the neck", ("neck zip", "side zip")),  # one word of it
        ("sundial", ()),
        ("", ()),
    ],
)
def test_nearest(said: str, near: tuple[str, ...]) -> None:
    known = ("length", "width", "loop", "neck zip", "side zip")
    assert nearest(said, known) == near


def test_other_words_go_first() -> None:
    """A title is no toile, though five of its letters are."""
    also = {"title": ("garment",), "name": ("garment", "gone")}
    assert nearest("title", ("toile", "garment"), also) == ("garment",)
    assert nearest("Names", ("toile", "garment"), also) == ("garment",)
    assert which_feature("press studs") == which_feature("press stud")


def test_a_question_of_several() -> None:
    assert did_you_mean("zips", ("neck zip", "side zip", "skirt zip")) == (
        "did you mean neck zip, side zip or skirt zip?"
    )
    assert did_you_mean("loo", ("loop",), quoted=True) == 'did you mean "loop"?'
    assert did_you_mean("moon", ("loops",)) == ""


def test_every_other_word_of_a_feature_leads_to_one() -> None:
    for said, kinds in CALLED.items():
        assert said == said.lower()
        assert said not in KINDS, f"{said} is a kind itself"
        assert set(kinds) <= set(KINDS), said
        assert f'"{kinds[0]}"' in which_feature(said)


def test_a_collar_of_an_unknown_kind_offers_collars() -> None:
    said = which_feature("round collar")
    assert "collar" in said
    assert said.count('"') == 12  # no more than six of them

"""Bodies for tests: standard ones, the demo's clients, and two public surveys."""

import csv
from functools import cache
from importlib import resources
from pathlib import Path

from clothwright.body import Body, read_body

AUTHORITIES = Path(__file__).parent / "authorities"

P80 = Body.of({"HT": 165, "HB": 76, "B": 80, "W": 62, "H": 88}, client="P80")
P92 = Body.of({"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98}, client="P92")
P116 = Body.of({"HT": 165, "HB": 107, "B": 116, "W": 98, "H": 122}, client="P116")
"""Standard bodies of the check values: everything else is estimated (handbook)."""


def _demo(name: str) -> Body:
    text = (
        resources.files("clothwright.demo").joinpath(f"{name}.toml").read_text("utf8")
    )
    return read_body(text, f"{name}.toml")


BRIDA, YSOLDE, THEA = _demo("brida"), _demo("ysolde"), _demo("thea")

BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def _rows(name: str) -> list[dict[str, float]]:
    text = (AUTHORITIES / name).read_text("utf8")
    lines = [line for line in text.splitlines() if not line.startswith("#")]
    return [{k: float(v) for k, v in row.items()} for row in csv.DictReader(lines)]


@cache
def bdims_women() -> tuple[Body, ...]:
    """The 260 women of bdims; bust from the high bust by the handbook (HB + 5)."""
    return tuple(
        Body.of(
            {
                "HT": r["hgt"],
                "HB": r["che_gi"],
                "B": r["che_gi"] + 5,
                "W": r["wai_gi"],
                "H": r["hip_gi"],
            },
            client=f"bdims {i}",
        )
        for i, r in enumerate(_rows("bdims-women.csv"), 1)
    )


@cache
def ansur_legs() -> tuple[Body, ...]:
    """The same 993 women as trousers need them: inside leg, thigh, calf, ankle, and
    heel and instep were taken."""
    return tuple(
        Body.of(
            {
                "HT": r["stature"],
                "W": r["waistcircumference"] - NAVEL_TO_WAIST,
                "H": r["buttockcircumference"],
                "IL": r["crotchheight"],
                "TH": r["thighcircumference"],
                "CA": r["calfcircumference"],
                "AN": r["anklecircumference"],
                "FT": r["heelanklecircumference"],
            },
            client=f"ansur {int(r['subject_id'])}",
        )
        for r in _rows("ansur2-female-a.csv")
    )


NAVEL_TO_WAIST = 6.6
"""Navel girth less natural waist, the survey of 1988 (both were taken there), cm."""


@cache
def ansur_women() -> tuple[Body, ...]:
    """The 993 women of the survey's half; columns that are the same measure as ours,
    the waist by the offset above, the tailor's shoulder 1 cm inside the acromion."""
    return tuple(
        Body.of(
            {
                "HT": r["stature"],
                "B": r["chestcircumference"],
                "W": r["waistcircumference"] - NAVEL_TO_WAIST,
                "H": r["buttockcircumference"],
                "N": r["neckcircumferencebase"],
                "NK": r["neckcircumference"],
                "SH": r["shoulderlength"] - 1.0,
                "WR": r["wristcircumference"],
                "HEAD": r["headcircumference"],
            },
            client=f"ansur {int(r['subject_id'])}",
        )
        for r in _rows("ansur2-female-a.csv")
    )


@cache
def ansur_whole() -> tuple[Body, ...]:
    """The same 993 women with all that was taken, for tops and trousers alike."""
    return tuple(
        Body.of(
            {v.code: v.value for b in both for v in b.values.values()},
            client=both[0].client,
        )
        for both in zip(ansur_women(), ansur_legs(), strict=True)
    )

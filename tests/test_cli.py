"""The command line on the demo: every sheet, exact scale, every seam's length.

Scale is read from the files by independent readers (pypdfium2 and pdfplumber for PDF,
svgpathtools, ezdxf); seams must come back within 0.1 mm of the draft.
"""

import json
import math
import os
import re
import subprocess
import sys
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

import pytest
import svgpathtools
from typer.testing import CliRunner

import clothwright
from clothwright.cli import app, main
from clothwright.order import Draft, draft, read_order
from clothwright.paper import EdgeKind

MM = 0.1
RUN = CliRunner()


@cache
def demo() -> Path:
    folder = Path(mkdtemp())
    assert RUN.invoke(app, ["starter", str(folder / "in")]).exit_code == 0
    done = RUN.invoke(
        app, ["make", str(folder / "in/peplum-top.toml"), "--into", str(folder / "out")]
    )
    assert done.exit_code == 0, done.output
    return folder


@cache
def made() -> Draft:
    return draft(read_order(demo() / "in/peplum-top.toml"))


def test_every_sheet_is_there() -> None:
    names = {p.name for p in (demo() / "out").iterdir()}
    assert names == {
        "peplum-top-a4.pdf",
        "peplum-top.svg",
        "peplum-top.dxf",
        "peplum-top.plt",
        "peplum-top-steps.pdf",
        "peplum-top-dimensions.pdf",
    }


def test_svg_edges_have_the_draft_s_lengths() -> None:
    paths, attributes = svgpathtools.svg2paths(str(demo() / "out/peplum-top.svg"))
    found = {
        a["id"]: path.length() / 10 for path, a in zip(paths, attributes, strict=True)
    }
    for piece in made().sheet.pieces.values():
        for e in piece.edges:
            kind = "FOLD" if e.kind is EdgeKind.FOLD else "SEW"
            name = f"{piece.code}.{kind}.{piece.code}.{e.name.replace(' ', '-')}"
            assert found[name] == pytest.approx(e.length, abs=0.1 * MM)


def test_dxf_sew_lines_have_the_draft_s_lengths() -> None:
    from ezdxf import recover
    from ezdxf.entities.polyline import Polyline

    doc, auditor = recover.readfile(demo() / "out/peplum-top.dxf")
    assert not auditor.errors
    lengths = []
    for block in doc.blocks:
        for line in block.query('POLYLINE[layer=="14"]'):
            assert isinstance(line, Polyline)
            points = [v.dxf.location for v in line.vertices]
            lengths.append(
                sum(math.dist(a, b) for a, b in zip(points, points[1:], strict=False))
                / 10
            )
        for entity in block.query('LINE[layer=="14"]'):
            lengths.append(math.dist(entity.dxf.start, entity.dxf.end) / 10)
    for piece in made().sheet.pieces.values():
        for e in piece.edges:
            if e.kind.value == "fold":
                continue
            whole = e.length * (
                2 if piece.fold and abs(_meets_fold(piece, e.name)) else 1
            )
            near = min(min(abs(v - e.length), abs(v - whole)) for v in lengths)
            assert near <= MM, (piece.code, e.name, e.length)


def _meets_fold(piece: object, name: str) -> bool:
    from clothwright.paper import Piece

    assert isinstance(piece, Piece)
    fold = piece.fold
    assert fold is not None
    return name in (piece.before(fold.name).name, piece.after(fold.name).name)


def test_hpgl_draws_whole_plotter_units() -> None:
    text = (demo() / "out/peplum-top.plt").read_text("ascii")
    assert text.startswith("IN;")
    assert text.rstrip().endswith("SP0;")
    assert "." not in "".join(p for p in text.split(";") if p[:2] in ("PU", "PD", "PA"))


@pytest.mark.parametrize("paper", ["a4", "letter", "a0", "roll"])
@pytest.mark.parametrize("scale", ["full", "half"])
def test_a_pdf_on_every_paper(paper: str, scale: str, tmp_path: Path) -> None:
    import pdfplumber

    done = RUN.invoke(
        app,
        [
            "make",
            str(demo() / "in/peplum-top.toml"),
            "--into",
            str(tmp_path),
            "--paper",
            paper,
            "--scale",
            scale,
            "--only",
            "pdf",
        ],
    )
    assert done.exit_code == 0, done.output
    (file,) = tmp_path.iterdir()
    with pdfplumber.open(file) as pdf:
        first = pdf.pages[0]
        mm = 72 / 25.4
        squares = [r for r in first.rects if abs(r["width"] - r["height"]) < 0.05 * mm]
        sizes = [r["width"] / mm for r in squares]
        assert any(abs(s - 100.0) <= 0.05 for s in sizes), sizes
        assert any(abs(s - 101.6) <= 0.05 for s in sizes), sizes


def test_json_is_complete_and_documented() -> None:
    done = RUN.invoke(app, ["check", str(demo() / "in/peplum-top.toml"), "--json"])
    data = json.loads(done.stdout)
    for symbol in (
        "half",
        "xs",
        "Dm",
        "yB",
        "θ",
        "κ",
        "σf′",
        "Lr",
        "slant",
        "w½",
        "r",
        "φF",
    ):
        assert symbol in data["numbers"], symbol
    for point in ("hb", "hf", "BP", "G", "U1", "U2", "Nf′", "Nb′", "Qf", "E1", "E2"):
        assert point in data["points"]
    for edge in ("FC.panel", "FS.panel", "BC.slant", "PF.waist", "FF.neck"):
        assert data["edges"][edge] > 0
    assert {"S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"} <= set(data["seams"])
    documented = (Path(__file__).parents[1] / "docs/figures.md").read_text("utf8")
    for key in data:
        assert f"`{key}`" in documented or key == "format"


def test_why_features_measures() -> None:
    order = str(demo() / "in/peplum-top.toml")
    assert "11 1/16 in" in RUN.invoke(app, ["why", order, "slant"]).stdout
    assert "S1" in RUN.invoke(app, ["why", order, "FC.panel"]).stdout
    assert "E1" in RUN.invoke(app, ["why", order, "E1"]).stdout
    assert "FC.panel" in RUN.invoke(app, ["why", order]).stdout
    none = RUN.invoke(app, ["why", order, "moonshine"])
    assert none.exit_code == 3
    assert "nothing called moonshine; `clothwright why" in none.stderr
    words = RUN.invoke(app, ["why", order, "slanted edge"])  # told by its words
    assert words.exit_code == 3
    assert "  slant  11 1/16 in  slanted edge\n" in words.stderr
    assert "  E1  " in RUN.invoke(app, ["why", order]).stdout
    assert "boat" in RUN.invoke(app, ["features", "neckline"]).stdout
    bands = RUN.invoke(app, ["features", "low open back"]).stdout
    assert "The back is open, DEPTH DEPTH_FROM, its edges TOP from" in bands
    tent = RUN.invoke(app, ["features", "tent"]).stdout
    assert 'add a "torso"' in tent  # what it needs
    assert '"the front alone"; left out: "front and back"' in tent
    near = RUN.invoke(app, ["features", "tnet"])
    assert near.exit_code == 2
    assert 'did you mean "tent"?' in near.stderr
    fit = RUN.invoke(app, ["measures", str(demo() / "in/brida.toml")])
    assert "fit together" in fit.stdout


def test_seams_and_symbols_of_the_notes() -> None:
    """Seam table S1 to S18 of first garment 21, and the symbols of its 5.3, 5.4 and 12;
    values by its own formulas."""
    order = str(demo() / "in/peplum-top.toml")
    data = json.loads(RUN.invoke(app, ["check", order, "--json"]).stdout)
    assert {f"S{i}" for i in range(1, 19)} <= set(data["seams"])
    n = {k: v["value"] for k, v in data["numbers"].items()}
    half = math.radians(n["κ"]) / 2
    assert n["Rf"] == pytest.approx(min(8.0, 0.3 / (1 / math.cos(half) - 1)))
    assert n["T(Rf)"] == pytest.approx(n["Rf"] * math.tan(half))
    assert n["loss"] == pytest.approx(n["Rf"] * 2 * (math.tan(half) - half))
    # what is opened gives the ease and what the rounding takes up, "correct o once"
    assert n["o"] == pytest.approx(n["ep"] + n["loss"], abs=0.05)
    for joint, piece in (("Jf", "D1"), ("Js", "wf"), ("Jb", "D1b")):
        ends = (data["points"][joint], data["points"][piece])
        assert 0.1 < math.dist(*ends) < 0.4, joint  # run on by δ
    assert n["A"] == pytest.approx(
        sum(data["edges"][f"{p}.armhole"] for p in ("FC", "FS", "BS", "BC"))
    )
    for code in ("S15", "S16", "S17"):
        seam = data["seams"][code]
        assert seam["left length"] == pytest.approx(seam["right length"], abs=0.1)
    assert len(data["seams"]["S16"]["notches"]) == n["n"]


def test_why_of_a_seam() -> None:
    order = str(demo() / "in/peplum-top.toml")
    there = RUN.invoke(app, ["why", order, "S9"])
    assert there.exit_code == 0
    assert "BF.neck + BF.slant: 16 15/16 in" in there.stdout
    other = RUN.invoke(app, ["why", order, "S21"])
    assert other.exit_code == 0
    assert "centre back seam; this garment has no such seam" in other.stdout
    assert "UP.lap line" in RUN.invoke(app, ["why", order, "S15"]).stdout
    assert "by …: 3/16 in" in RUN.invoke(app, ["why", order, "o"]).stdout
    assert "waist" in RUN.invoke(app, ["why", order, "Jf"]).stdout


def test_one_seam_and_no_number(tmp_path: Path) -> None:
    """An order of two panels and without a number of its own."""
    (tmp_path / "brida.toml").write_text((demo() / "in/brida.toml").read_text("utf8"))
    text = 'garment = "Skirt"\nunit = "in"\nmeasures = "brida.toml"\n' + "".join(
        f'[[feature]]\nkind = "{k}"\n' for k in ("gathered skirt", "elastic waist")
    )
    order = tmp_path / "skirt.toml"
    order.write_text(text, "utf8")
    assert "The seam meets." in RUN.invoke(app, ["check", str(order)]).stdout
    assert read_order(order).whose == "Brida Hollin"
    order.write_text(f'number = "7"\n{text}', "utf8")
    assert read_order(order).whose == "Brida Hollin, order 7"


def test_measures_out_of_the_usual_and_a_setting_of_the_order(tmp_path: Path) -> None:
    text = 'client = "M"\nunit = "in"\n[measures]\nHT = 57\n'
    (tmp_path / "m.toml").write_text(text, "utf8")
    said = RUN.invoke(app, ["measures", str(tmp_path / "m.toml")]).stdout
    assert "Measure again: stature (HT) 57 in is outside" in said
    (tmp_path / "m.toml").write_text(f'estimates = "survey"\n{text}', "utf8")
    refused = RUN.invoke(app, ["measures", str(tmp_path / "m.toml")])
    assert refused.exit_code == 3
    assert "estimates stands in the order; leave it out" in refused.stderr


def test_measures_say_what_is_missing(tmp_path: Path) -> None:
    text = (demo() / "in/brida.toml").read_text("utf8")
    (tmp_path / "no-bust.toml").write_text(text.replace('\nB = "36 1/2"', ""), "utf8")
    said = RUN.invoke(app, ["measures", str(tmp_path / "no-bust.toml")]).stdout
    assert "Missing: the bust girth (B), without which a bodice or a dress" in said
    assert "fit together" not in said or "as far as they go" in said


def test_stopped_while_it_loads(tmp_path: Path) -> None:
    """Ctrl-C while the command line is being loaded: no traceback."""
    (tmp_path / "typer.py").write_text(
        "import os, signal, time\nos.kill(os.getpid(), signal.SIGINT)\ntime.sleep(9)\n"
    )
    path = f"{tmp_path}{os.pathsep}{Path(clothwright.__file__).parents[1]}"
    done = subprocess.run(
        [sys.executable, "-m", "clothwright", "features"],
        env={**os.environ, "PYTHONPATH": path},
        capture_output=True,
        text=True,
        timeout=30,
    )
    assert (done.returncode, done.stdout, done.stderr) == (130, "", "")


def test_failures_stand_on_the_first_page(tmp_path: Path) -> None:
    import pdfplumber

    for name in ("brida.toml", "peplum-top.toml"):
        text = (demo() / "in" / name).read_text("utf8")
        (tmp_path / name).write_text(
            text.replace('depth = "3 1/8"', 'depth = "11 1/2"'), "utf8"
        )
    done = RUN.invoke(
        app,
        [
            "make",
            str(tmp_path / "peplum-top.toml"),
            "--into",
            str(tmp_path / "o"),
            "--only",
            "pdf",
        ],
    )
    assert done.exit_code == 4
    with pdfplumber.open(tmp_path / "o/peplum-top-a4.pdf") as pdf:
        words = " ".join((pdf.pages[0].extract_text() or "").split())
    assert "reaches below the bust points" in words


def test_a_roll_too_wide_for_frames_is_told_before_anything_is_written(
    tmp_path: Path,
) -> None:
    import re

    from clothwright.sheets.formats import MARGIN
    from clothwright.sheets.hpgl import REACH

    order, into = str(demo() / "in/peplum-top.toml"), str(tmp_path / "o")
    done = RUN.invoke(app, ["make", order, "--into", into, "--frames"])
    assert done.exit_code == 5
    assert "take a roll of at most 83.9 cm" in done.output
    assert not (tmp_path / "o").exists()
    widest = ["--roll", "83.9", "--frames", "--only", "hpgl"]
    done = RUN.invoke(app, ["make", order, "--into", into, *widest])
    assert done.exit_code == 0, done.output
    said = " ".join(RUN.invoke(app, ["make", "--help"]).stdout.split())
    assert "--roll 83.9" in re.sub(r"[│ ]+", " ", said)
    assert 83.9 <= REACH + 2 * MARGIN < 84.0


def test_an_answer_that_cannot_be_written_is_told() -> None:
    """A full disk behind the standard output, and one that knows few letters."""
    main = "from clothwright.cli import main; main()"
    ask = [sys.executable, "-c", main, "features", "low open back"]
    with Path("/dev/full").open("w") as full:
        told = subprocess.run(ask, stdout=full, stderr=subprocess.PIPE, check=False)
    assert told.returncode == 5
    assert told.stderr.startswith(b"The answer could not be written out (No space")
    assert b"Traceback" not in told.stderr
    few = {**os.environ, "PYTHONIOENCODING": "ascii"}
    shown = subprocess.run(ask, env=few, capture_output=True, check=False)
    assert shown.returncode == 0


def test_a_fault_of_the_program_is_told_in_a_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken() -> None:
        raise ValueError("a curve of no length")

    monkeypatch.setattr("clothwright.cli.app", broken)
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 6
    told = capsys.readouterr().err
    assert "ValueError, a curve of no length (test_cli.py, line" in told
    assert "Traceback" not in told and "Nothing was written" in told.replace("\n", " ")


def test_starting_needs_no_output_library() -> None:
    import subprocess
    import sys

    code = (
        "import sys, clothwright.cli, clothwright.order\n"
        "bad = {'ezdxf', 'reportlab', 'shapely', 'typst'} & set(sys.modules)\n"
        "assert not bad, bad"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_a_skirt_is_not_troubled_with_the_bust(tmp_path: Path) -> None:
    """A doubtful bust is told where it is used; a doubtful waist in both."""
    bust = (demo() / "in/thea.toml").read_text("utf8").replace("\nB = 84", "\nB = 104")
    (tmp_path / "thea.toml").write_text(bust, "utf8")
    for name, told in (
        ("straight-skirt", False),
        ("trousers", False),
        ("zip-top", True),
    ):
        order = (demo() / f"in/{name}.toml").read_text("utf8")
        order = order.replace("ysolde.toml", "thea.toml")
        (tmp_path / "o.toml").write_text(order, "utf8")
        said = RUN.invoke(app, ["check", str(tmp_path / "o.toml")]).stdout
        assert ("bust girth (B) 104" in said) is told, name
    waist = bust.replace("\nW = 66", "\nW = 92")
    (tmp_path / "thea.toml").write_text(waist, "utf8")
    for name in ("straight-skirt", "zip-top"):
        order = (demo() / f"in/{name}.toml").read_text("utf8")
        order = order.replace("ysolde.toml", "thea.toml")
        (tmp_path / "o.toml").write_text(order, "utf8")
        said = RUN.invoke(app, ["check", str(tmp_path / "o.toml")]).stdout
        assert "waist and hip do not fit each other" in said, name


def test_what_is_estimated_is_told() -> None:
    """Brida's legs were never measured; a top does not ask for them."""
    text = (demo() / "in/trousers.toml").read_text("utf8").replace("thea", "brida")
    (demo() / "in/legs.toml").write_text(text, "utf8")
    said = RUN.invoke(app, ["check", str(demo() / "in/legs.toml")]).stdout
    assert "Note: Estimated, not measured: body rise (BR), " in said
    assert "Make a toile first." in said
    rise = RUN.invoke(app, ["why", str(demo() / "in/legs.toml"), "BR"]).stdout
    assert "(estimated, ± 1.3 cm)" in rise
    inches = re.sub(
        r"(?m)^(hip_ease|rise_ease|knee|hem|width|selvedge) = .*\n", "", text
    )
    inches = inches.replace('unit = "cm"', 'unit = "in"')
    (demo() / "in/legs.toml").write_text(inches, "utf8")
    rise = RUN.invoke(app, ["why", str(demo() / "in/legs.toml"), "BR"]).stdout
    assert "(estimated, ± 1/2 in)" in rise  # 1.3 cm
    top = RUN.invoke(app, ["check", str(demo() / "in/peplum-top.toml")]).stdout
    assert "Estimated" not in top


def test_a_paper_is_named_as_it_is_written(tmp_path: Path) -> None:
    order = str(demo() / "in/straight-skirt.toml")
    asked = ["make", order, "--paper", "Letter", "--only", "pdf", "--into"]
    assert RUN.invoke(app, [*asked, str(tmp_path)]).exit_code == 0
    assert (tmp_path / "straight-skirt-letter.pdf").is_file()


def test_an_inch_order_tells_no_bare_centimetres() -> None:
    """Table of the roll of a flat collar: 0.8 cm is 5/16 in, 2.5 cm are 1 in."""
    from clothwright.features.collars.flat_collar import FLAT
    from clothwright.units import Unit, retold

    told = retold(FLAT.rules["c_roll"].formula, Unit.IN)
    assert told.startswith("none up to ½ in, ⁵⁄₁₆ in at 1 in, ")
    assert "." not in told

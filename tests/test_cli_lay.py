"""`clothwright lay`: what it prints and writes, and its sentences."""

import json
import signal
import subprocess
import sys
import time
from importlib import resources
from pathlib import Path

import pytest
from typer.testing import CliRunner

from clothwright.cli import app

DEMO = resources.files("clothwright.demo")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("peplum-top.toml", "brida.toml"):
        (tmp_path / name).write_text(DEMO.joinpath(name).read_text("utf8"), "utf8")
    return tmp_path


def run(*words: str) -> tuple[int, str, str]:
    got = CliRunner().invoke(app, ["lay", *words])
    assert got.exception is None or isinstance(got.exception, SystemExit), got.exception
    return got.exit_code, got.stdout, got.stderr


def test_a_lay_of_every_cloth(folder: Path) -> None:
    order = str(folder / "peplum-top.toml")
    code, out, _ = run(order, "--seconds", "0.1", "--into", str(folder / "out"))
    assert code == 0
    for said in (
        "ink crêpe (shell)",
        "Heron lining (lining)",
        "To buy:",
        "web fusible",
    ):
        assert said in out
    assert (folder / "out" / "peplum-top-lay.pdf").stat().st_size > 5000


def test_as_json(folder: Path) -> None:
    order = str(folder / "peplum-top.toml")
    code, out, _ = run(order, "--cloth", "lining", "--seconds", "0.1", "--json")
    assert code == 0
    (told,) = json.loads(out)
    assert told["cloth"] == "lining"
    assert told["pieces"][0]["code"] == "UP"
    assert told["buy"]["told"] == "0.5 m"


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("--cloth", "felt"), 3, "the cloths of this order are shell, lining"),
        (("--seconds", "0"), 2, "0.1 to 3600"),
        (("--gap", "-1"), 2, "0 to 5"),
        (("--tilt", "3"), 2, "0 to 1"),
        (("--into", "peplum-top.toml"), 5, "name another"),
    ],
)
def test_bad_wishes(folder: Path, words: tuple[str, ...], code: int, said: str) -> None:
    words = tuple(str(folder / w) if w.endswith("toml") else w for w in words)
    wish = (str(folder / "peplum-top.toml"), "--cloth", "lining", *words)
    got, out, err = run(*(wish if words[0] != "--cloth" else (wish[0], *words)))
    assert got == code
    assert said in err
    assert not out
    assert "Traceback" not in err


def test_too_narrow_a_cloth(folder: Path) -> None:
    order = folder / "peplum-top.toml"
    text = order.read_text("utf8").replace('width = "140 cm"', 'width = "30 cm"')
    order.write_text(text, "utf8")
    code, _, err = run(str(order), "--cloth", "shell", "--seconds", "0.1")
    assert code == 3
    assert "Front peplum is" in err
    assert "it takes a width of" in err
    assert not list(folder.glob("**/*.pdf"))


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="looks into /proc")
def test_ctrl_c_keeps_the_best_so_far(folder: Path) -> None:
    order = str(folder / "peplum-top.toml")
    # a runner in the background starts its programs deaf to Ctrl-C
    code = (
        "import signal; signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "from clothwright.cli import main; main()"
    )
    words = [sys.executable, "-c", code, "lay"]
    wish = ["--cloth", "shell", "--fold", "single", "--seconds", "100"]
    with subprocess.Popen(
        [*words, order, *wish],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        # it lays as soon as its packer runs beside it
        beside = Path(f"/proc/{process.pid}/task/{process.pid}/children")
        while process.poll() is None and not beside.read_text():
            time.sleep(0.1)
        time.sleep(1.0)
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
    assert process.returncode == 0, err
    assert "Stopped by hand" in out
    assert list(folder.glob("**/*.pdf"))


def test_making_a_pattern_loads_no_polygons() -> None:
    """Start-up time: the lay's libraries are loaded only when a lay is asked for."""
    code = (
        "import sys, clothwright.api, clothwright.cli, clothwright.sheets\n"
        "assert not {'shapely', 'numpy', 'spyrrow'} & set(sys.modules)\n"
        "import clothwright.api as cw; cw.lay\n"
        "assert 'shapely' in sys.modules"
    )
    subprocess.run([sys.executable, "-c", code], check=True)

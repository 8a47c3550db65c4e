"""The search beside us: ever shorter lays, ended when it is told, refusals told."""

import queue
import sys
from importlib import resources
from pathlib import Path

import pytest
import tomli_w

from clothwright.app.slipfile import read_slip
from clothwright.lay.seeking import Found, Seeking


def peplum(**cloth: object) -> str:
    """The demo's first order, whole, with its shell changed."""
    demo = resources.files("clothwright.demo")
    order = read_slip(demo.joinpath("peplum-top.toml").read_text(encoding="utf-8"))
    body = read_slip(demo.joinpath("brida.toml").read_text(encoding="utf-8"))
    order.update(body)
    order["cloths"]["shell"].update(cloth)
    return tomli_w.dumps(order)


def test_ever_shorter_and_stopped_at_any_time() -> None:
    heard: queue.Queue[Found | str] = queue.Queue()
    seeking = Seeking(
        peplum(),
        "the slip",
        "",
        "shell",
        None,
        600.0,
        found=heard.put,
        refused=heard.put,
    )
    first = heard.get(timeout=60)
    assert isinstance(first, Found)
    assert len(first.placed) > 5
    seeking.stop()  # ten minutes are not waited for
    found = [first]
    while not found[-1].done:
        got = heard.get(timeout=60)
        assert isinstance(got, Found)
        found.append(got)
    lengths = [f.length for f in found if f.fold is found[-1].fold]
    assert lengths == sorted(lengths, reverse=True)


def test_ended_in_the_middle_of_a_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A long line is not written at once: half of one is no lay, and no fault."""
    program = tmp_path / "program"
    program.write_text("#!/bin/sh\nread wish\nprintf '{\"length\": 1'\n")
    program.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(program))
    heard: queue.Queue[Found | str] = queue.Queue()
    Seeking("", "", "", "shell", None, 1.0, found=heard.put, refused=heard.put)
    said = heard.get(timeout=60)
    assert said == "The search ended without a lay; try it again."


def test_what_does_not_go_is_a_sentence() -> None:
    heard: queue.Queue[Found | str] = queue.Queue()
    Seeking(
        peplum(width="30 cm"),
        "the slip",
        "",
        "shell",
        None,
        0.2,
        found=heard.put,
        refused=heard.put,
    )
    got = heard.get(timeout=60)
    assert isinstance(got, str)
    assert "in a single layer it takes a width of" in got

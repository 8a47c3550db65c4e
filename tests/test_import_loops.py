"""No import loops, so that every module imports by itself, whatever came before it.

Read from the sources (only what is imported on loading counts); the layer rule itself
is checked by import-linter (see .importlinter).
"""

import ast
import graphlib
import pkgutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import clothwright

NAMES = frozenset(
    m.name for m in pkgutil.walk_packages(clothwright.__path__, "clothwright.")
)


def loaded_by(name: str, *, ever: bool = False) -> set[str]:
    """Our modules that a module imports while it is loaded, or `ever`: within its
    functions, and for its types alone, too."""
    spec = find_spec(name)
    assert spec is not None
    assert spec.origin is not None
    found: set[str] = set()
    tree = ast.parse(Path(spec.origin).read_text(encoding="utf-8"))
    for node in ast.walk(tree) if ever else tree.body:
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name} imports by a relative name"
            base = node.module or ""
            parts = {f"{base}.{alias.name}" for alias in node.names}
            found |= parts & NAMES or {base}
    return found & NAMES


def test_no_import_loops() -> None:
    graph = {name: loaded_by(name) for name in NAMES}
    assert graph["clothwright.curves.path"] >= {"clothwright.curves.cubic"}
    order = list(graphlib.TopologicalSorter(graph).static_order())
    assert set(order) == NAMES


def test_the_app_s_modules_need_each_other_one_way() -> None:
    """Nothing is put off to the inside of a function to hide a loop."""
    app = {n for n in NAMES if n.startswith("clothwright.app.")}
    graph = {name: loaded_by(name, ever=True) & app for name in app}
    assert graph["clothwright.app.changes"] >= {"clothwright.app.room"}
    assert set(graphlib.TopologicalSorter(graph).static_order()) == app


def test_the_highest_and_lowest_import_by_themselves() -> None:
    for name in ("clothwright.findings", "clothwright.curves.pens", "clothwright.api"):
        subprocess.run([sys.executable, "-c", f"import {name}"], check=True)

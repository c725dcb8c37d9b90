"""The arrows between the rooms: text → tree → play → scene → bytes, and nothing back."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest
from importlinter.cli import lint_imports
from together import together

COMPILER = Path(__file__).parent.parent / "compiler"

LIBRARIES: dict[str, set[str]] = {
    "lark": {"syntax"},
    "svgwrite": {"emit"},
    "weasyprint": {"emit"},
    "pydyf": {"emit"},
    "tinycss2": {"emit"},
    "tinyhtml5": {"emit"},
    "jinja2": {"emit"},
    "markupsafe": {"emit"},
    "fontTools": {"picture"},
    "numpy": {"football"},
    "platformdirs": {"outside"},
    "click": {"commands"},
    "rich": {"commands"},
    "filelock": {"outside"},
    "resvg_py": {"emit"},
}


def modules() -> list[Path]:
    return sorted(COMPILER.rglob("*.py"))


def room_of(path: Path) -> str:
    return path.relative_to(COMPILER).parts[0].removesuffix(".py")


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module)
        elif isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
    return names


def test_the_arrows_between_the_rooms_hold(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(COMPILER.parent)
    assert lint_imports(config_filename=".importlinter", no_cache=True) == 0


def test_an_arrow_that_leads_back_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    contracts = (COMPILER.parent / ".importlinter").read_text("utf-8")
    wrong = contracts.replace("    layout\n    content\n", "    content\n    layout\n")
    (tmp_path / ".importlinter").write_text(wrong, "utf-8")
    monkeypatch.chdir(tmp_path)
    assert lint_imports(config_filename=".importlinter", no_cache=True) == 1


def places(names: Iterable[tuple[str, Path]]) -> dict[str, list[str]]:
    """Names that stand for two things or more, and where."""
    found: dict[str, list[str]] = {}
    for name, path in names:
        found.setdefault(name, []).append(str(path.relative_to(COMPILER)))
    return {name: where for name, where in found.items() if len(where) > 1}


def test_no_two_rooms_use_one_word_for_two_things() -> None:
    """A class by its name, also one that only its own file knows: a reader looks for the word."""
    classes = (
        (node.name, path)
        for path in modules()
        for node in ast.parse(path.read_text("utf-8")).body
        if isinstance(node, ast.ClassDef)
    )
    assert places(classes) == {}


def test_no_two_files_share_a_name() -> None:
    assert places((p.name, p) for p in modules() if p.name != "__init__.py") == {}


@together("path", modules(), ids=lambda p: str(p.relative_to(COMPILER)))
def test_a_library_is_met_in_one_room(path: Path) -> None:
    outside = {n.split(".")[0] for n in imported(path)} - set(sys.stdlib_module_names)
    for library in outside - {"stemline"}:
        assert room_of(path) in LIBRARIES[library]


def test_the_check_can_see_an_import(tmp_path: Path) -> None:
    module = tmp_path / "m.py"
    module.write_text("from stemline.emit import svg\nimport lark\n", "utf-8")
    assert imported(module) == {"stemline.emit", "lark"}

"""The arrows between the rooms: text → tree → play → scene → bytes, and nothing back."""

from __future__ import annotations

import ast
import sys
from pathlib import Path

import pytest

COMPILER = Path(__file__).parent.parent / "compiler"

ROOMS: dict[str, set[str]] = {
    "source": set(),
    "paths": set(),
    "theme": {"source", "diagnostics"},
    "diagnostics": {"source"},
    "football": {"source", "paths"},
    "syntax": {"source", "diagnostics"},
    "resolve": {"source", "paths", "diagnostics", "syntax", "football"},
    "checks": {"source", "paths", "diagnostics", "football", "resolve"},
    "session": {"source", "diagnostics", "football", "syntax", "resolve", "checks"},
    "stages": {"source", "paths", "football", "syntax", "draw", "theme", "session"},
    "draw": {"source", "paths", "football", "theme"},
    "book": {"source", "paths", "football"},
    "emit": {"paths", "draw", "book", "theme"},
    "printing": {"diagnostics", "football", "draw", "book", "emit", "theme"},
    "reading": {"source", "diagnostics"},
    "repository": set(),
    "project": {"reading", "repository"},
    "outside": {"source", "diagnostics"},
    "cache": set(),
    "facing": {"football", "resolve", "book", "cache"},
    "output": {
        "source", "diagnostics", "football", "resolve", "session", "draw", "book", "emit",
        "printing", "theme", "outside",
    },
    "commands": {
        "source", "diagnostics", "football", "resolve", "session", "stages", "output", "project",
        "theme", "cache", "facing", "printing", "outside",
    },
    "__main__": {"commands"},
}  # fmt: skip

LIBRARIES: dict[str, set[str]] = {
    "lark": {"syntax"},
    "svgwrite": {"emit"},
    "weasyprint": {"emit"},
    "pydyf": {"emit"},
    "jinja2": {"emit"},
    "markupsafe": {"emit"},
    "fontTools": {"draw"},
    "numpy": {"football"},
    "platformdirs": {"cache"},
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


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(COMPILER)))
def test_a_room_imports_only_rooms_below_it(path: Path) -> None:
    room = room_of(path)
    if room == "__init__":
        return
    ours = {n.split(".")[1] for n in imported(path) if n.startswith("stemline.")}
    assert ours - {room} <= ROOMS[room]


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(COMPILER)))
def test_a_library_is_met_in_one_room(path: Path) -> None:
    outside = {n.split(".")[0] for n in imported(path)} - set(sys.stdlib_module_names)
    for library in outside - {"stemline"}:
        assert room_of(path) in LIBRARIES[library]


def test_every_room_is_known() -> None:
    assert {room_of(p) for p in modules()} - {"__init__"} == set(ROOMS)


def test_the_check_can_see_an_import(tmp_path: Path) -> None:
    module = tmp_path / "m.py"
    module.write_text("from stemline.emit import svg\nimport lark\n", "utf-8")
    assert imported(module) == {"stemline.emit", "lark"}

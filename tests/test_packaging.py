"""The wheel holds everything that is read at run time, and runs from any folder."""

from __future__ import annotations

import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PARTS = ("compiler", "grammar", "themes", "pyproject.toml", "README.md", "LICENSE")


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    work = tmp_path_factory.mktemp("wheel")
    tree = work / "tree"
    tree.mkdir()
    for part in PARTS:
        source = ROOT / part
        if source.is_dir():
            shutil.copytree(source, tree / part, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(source, tree / part)
    build = [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation"]
    subprocess.run([*build, "-w", str(work), str(tree)], check=True)
    (wheel,) = work.glob("*.whl")
    zipfile.ZipFile(wheel).extractall(work / "site")
    return work / "site"


def test_every_file_of_the_package_is_in_the_wheel(unpacked: Path) -> None:
    for folder, inside in (("compiler", ""), ("grammar", "grammar"), ("themes", "themes")):
        for path in (ROOT / folder).rglob("*"):
            if path.is_file() and "__pycache__" not in path.parts:
                assert (unpacked / "stemline" / inside / path.relative_to(ROOT / folder)).exists()


def test_the_wheel_makes_and_builds_a_playbook_from_another_folder(
    unpacked: Path, tmp_path: Path
) -> None:
    program = f"import sys; sys.path.insert(0, {str(unpacked)!r}); import stemline; "
    program += f"assert stemline.__file__.startswith({str(unpacked)!r}), stemline.__file__; "
    program += "from stemline.commands import main; main()"
    for args in (["new", "mine", "--code", "six-man"], ["build", "mine"]):
        words = [sys.executable, "-c", program, *args]
        done = subprocess.run(words, cwd=tmp_path, capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stderr
    assert (tmp_path / "mine" / "build" / "book.pdf").exists()

"""Playbooks of any size, as texts: the starter's two concepts over and over, under other names."""

from __future__ import annotations

import re
from importlib.resources import files
from itertools import product
from pathlib import Path

EACH = 10
"""Calls of one copy: a pass with a tag and a run, from two formations to both sides."""
_NAMES = ("Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel", "Larch", "Maple", "Oak", "Pine")
_SAID = re.compile(r"^(concept|run|dress|tag .* for) (.*)$", re.MULTILINE)
_DEPTH = re.compile(r"(?<=runs stick )\d+")


def write_book(folder: Path, calls: int) -> None:
    """A playbook of so many calls, a multiple of `EACH` and a thousand at most."""
    folder.mkdir()
    texts = {
        file.name: file.read_text("utf-8")
        for file in files("stemline.grammar").joinpath("starter", "high-school").iterdir()
        if file.name.endswith(".play")
    }
    copied = {name: texts.pop(name) for name in ("quick.play", "runs.play")}
    for name, text in texts.items():
        (folder / name).write_text(text, "utf-8")
    names = [" ".join(pair) for pair in product(_NAMES, _NAMES)][: calls // EACH]
    for number, own in enumerate(names):
        for name, text in copied.items():
            said = _SAID.sub(rf"\1 \2 {own}", text)
            deep = _DEPTH.sub(str(5 + number % 4), said)
            (folder / f"{number:02}-{name}").write_text(deep, "utf-8")

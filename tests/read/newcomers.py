"""A small book, and in it one line as somebody writes it who has not read the reference."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources import files

from stemline.session import Session
from stemline.source import Source

FILE = "tried.play"
HOSTS: Mapping[str, str] = {
    "concept": (
        "concept Tried\n    out man is strong #1\n    out man runs slant\n    mate is strong #2\n"
        "    mate runs hitch\n{}\n"
    ),
    "run": (
        "run Tried\n    carrier is back\n    carrier aims playside A\n"
        "    line blocks on or climb\n{}\n"
    ),
    "look": "look Tried extends Over Three\n{}\n",
    "dress": "dress Tried\n{}\n\nconcept Tried\n    out man is strong #1\n    out man runs slant\n",
    "formation": "formation Tried extends Doubles\n{}\n",
    "motion": "motion Tried\n{}\n",
    "route": "route Tried\n{}\n",
    "tag": "tag Tried for Stick\n{}\n",
    "personnel": "personnel Tried\n{}\n",
    "protection": "protection Tried\n{}\n",
    "week": "week 1 Larch Bay\n{}\n",
}
"""By kind a block that wants one line; the playbook block stands in a text of its own."""
_MOTION = "motion Jet\n    H moves to away, 2 outside tackle, off line\n    snap running\n"
_TAG = 'tag "Now or Never" for Stick\n    flat runs swing\n'


def written(kind: str, *lines: str) -> Session:
    """The starter of eleven men with a block of that kind that has those lines."""
    folder = files("stemline.grammar").joinpath("starter").joinpath("high-school")
    texts = {e.name: e.read_text("utf-8") for e in folder.iterdir() if e.name.endswith(".play")}
    texts["more.play"] = _MOTION + "\n" + _TAG
    inside = "\n".join(f"    {line}" if " Tried" not in line else line for line in lines)
    if kind == "playbook":
        _, behind = texts["book.play"].split("personnel", 1)
        texts["book.play"] = "personnel" + behind
        texts[FILE] = f"playbook Tried\n    code high school\n{inside}\n"
    else:
        texts[FILE] = HOSTS[kind].format(inside)
    return Session([Source(name, texts[name]) for name in sorted(texts)], "tried")

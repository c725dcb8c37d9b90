"""What a typesetter of the registry needs to set the drawings of a book: nothing but a yardstick.

`typst` is a library of the tests alone. It is given the pictures that a build has written, ready
made, each on a page of its own; it neither reads a play nor lays out a table.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from statistics import median
from time import process_time

from stemline.outside.project import read_files
from stemline.printing.drawings import Drawings, Showing
from stemline.session import Session
from stemline.theme import Size, load_theme

from .programs import Program, Ran

_SET = "import sys, typst; typst.compile(sys.argv[1], output=sys.argv[2])"


def set_by_typst(program: Program, pictures: Path, work: Path) -> Iterator[Ran]:
    """The pictures of a folder, a page each; nothing where `typst` is not installed."""
    if find_spec("typst") is None:
        return
    pages = (f'#page(width: auto, height: auto, image("{each.name}"))'
             for each in sorted(pictures.glob("*.svg")))  # fmt: skip
    text, book = pictures / "all.typ", work / "typst.pdf"
    text.write_text("\n".join(pages), "utf-8")
    command = [sys.executable, "-c", _SET, str(text), str(book)]
    ran = program.timed("typst, the same drawings", command, work)
    text.unlink()
    yield Ran(ran.what, ran.cpu, ran.wall, ran.peak, book.stat().st_size)


def pictures(folder: Path) -> tuple[float, float]:
    """Seconds that a large picture of a call takes, in the median and at most: drawn, written as
    SVG and as operators of a PDF."""
    session = Session(read_files(folder).sources, str(folder))
    season, _ = session.pictured()
    assert season is not None
    drawings, took = Drawings(load_theme()), []
    for play in season.plays:
        began = process_time()
        drawings.art("call", play, Showing(Size.FULL), svg=True)
        took.append(process_time() - began)
    return median(took), max(took)

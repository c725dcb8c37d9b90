"""A proof kept with what its call becomes: an edit of that play, or of a look, makes it new."""

from __future__ import annotations

from pathlib import Path

from lineup.look_texts import FRONT
from resolve.texts import THREE_TWO, TWELVE, dress

from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source

RUN = """run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
    kill to Slants when 6 in box
    kill to Hitches when press
"""
PASS = """concept {0}
    slant is strong #1
    slant runs {1}
    everyone else runs go
    flat is back
    flat blocks inside out
    feet quick
    read slant on quick
"""
BOOK = {
    "book": TWELVE + THREE_TWO,
    "run": RUN,
    "slants": PASS.format("Slants", "slant"),
    "hitches": PASS.format("Hitches", "hitch"),
    "look": FRONT,
    "dress": dress("Three Two", concept="Dive") + "\n",
}
EDITS = (
    {"slants": BOOK["slants"].replace("strong #1", "strong #4")},
    {"look": FRONT.replace("C at strong #1, 8 deep", "C at strong #1, 2 deep")
                  .replace("B at weak #1, 8 deep", "B at weak #1, 2 deep")},
    {"run": RUN.replace("6 in box", "9 in box")},
    {"hitches": BOOK["hitches"] + "    kill to Slants when 5 in box\n"},
)  # fmt: skip


def told(texts: dict[str, str], store: Store | None) -> list[tuple[str, int, str]]:
    asked = Session([Source(f"{n}.play", t) for n, t in texts.items()], "book", store=store)
    return [(d.code, d.span.line, d.message) for d in asked.checked("")]


def test_every_edit_is_seen_behind_what_is_kept(tmp_path: Path) -> None:
    store = Store(tmp_path)
    first = told(BOOK, store)
    assert first == told(BOOK, None)
    answers = [first]
    for edit in EDITS:
        made = told({**BOOK, **edit}, store)
        assert made == told({**BOOK, **edit}, None)
        answers.append(made)
    # Each edit but that of a count says something else, so that a stale answer would be seen.
    assert len({tuple(a) for a in answers}) == 4

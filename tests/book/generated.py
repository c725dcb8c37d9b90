"""Small playbooks made at random from sound pieces, the same ones each time.

A bundled book gives the men, formations, motions and, to every other one, the looks; the concept,
the run, their tags, a protection and the dress are drawn (`generated_texts`).
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from functools import cache

from gate.pictures import BUNDLED, PLAYBOOKS
from generated_texts import concept_text, protection_text, run_text, screen_text
from sampling import every

from stemline.football.play import Season
from stemline.outside.project import read_files
from stemline.read.read_playbook import read_playbook
from stemline.resolve.all_calls import all_calls
from stemline.resolve.concept_views import with_views
from stemline.resolve.season import season
from stemline.resolve.sheets import with_sheets
from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import Document

SEEDS = range(0, 200, every(7))
"""A seventh of them in a run: both books, with looks and without, with their sheets and without."""
_HEADS = {
    "saltmarsh-herons": "playbook Drawn\n    code canadian amateur\n    sections Made\n",
    "cedar-flats-lanterns": "playbook Drawn\n    code high school\n    sections Made\n",
}


@cache
def generated_seasons() -> tuple[Season, ...]:
    """A playbook for each of `SEEDS` with at least one pass and one run each; one in five with
    its pages' other looks and its sheets."""
    return tuple(_seasons())


def _seasons() -> Iterator[Season]:
    shared = {name: _shared(name) for name in BUNDLED}
    for seed in SEEDS:
        name = BUNDLED[seed % 2]
        text = generated_text(seed, name)
        documents = [*shared[name][seed // 2 % 2], parse(Source("drawn.play", text))[0]]
        book, found = read_playbook(documents, [], "drawn")
        assert book is not None, text
        assert not [d for d in found if d.is_error], (
            f"{text}\n{[(d.code, d.values) for d in found]}"
        )
        calls, _ = all_calls(book)
        made, said = season(book, calls, lambda *_: ())
        kinds = {play.kind for play in made.plays}
        assert len(kinds) == 2, f"{text}\n{[(d.code, d.values) for d in said]}"
        yield with_sheets(book, with_views(book, calls, made)) if seed % 10 < 2 else made


def generated_text(seed: int, book: str) -> str:
    """The blocks of one drawn playbook."""
    draw = random.Random(seed)
    guards = ("Wall", "five", "six", "six slide", "five slide", "big on big", "")
    parts = [_HEADS[book], protection_text(draw), run_text(draw, book)]
    parts.append(concept_text(draw, book, draw.choice(guards)))
    if draw.random() < 0.2:
        parts.append(screen_text(draw, book))
    return "\n".join(parts)


def _shared(name: str) -> tuple[list[Document], list[Document]]:
    """The book's formations, motions and, in the second, looks; of its first file the personnel."""
    documents, looks = [], []
    for source in read_files(PLAYBOOKS / name).sources:
        file = source.name.rpartition("/")[2]
        if file.endswith("book.play"):
            men = source.text[source.text.index("personnel") :]
            documents.append(parse(Source("people.play", men))[0])
        elif file.startswith(("formation", "motions")):
            documents.append(parse(source)[0])
        elif file.startswith("looks"):
            looks.append(parse(source)[0])
    return documents, [*documents, *looks]

"""What the stages of a build cost, in CPU seconds."""

from __future__ import annotations

import time
from collections.abc import Iterator

from stemline.outside.project import read_files
from stemline.printing.printed_season import Build
from stemline.resolve.concept_views import with_views
from stemline.resolve.sheets import with_sheets
from stemline.session import Session
from stemline.theme import load_theme

from .calls import PLAYBOOKS


def built(name: str) -> Iterator[tuple[str, float]]:
    """Each stage of building a bundled playbook's book and pictures, as it ends."""
    began = time.process_time()
    compiled = Session(read_files(PLAYBOOKS / name).sources, name)
    assert compiled.book is not None and compiled.season is not None
    yield "compile for a build", time.process_time() - began
    began = time.process_time()
    season = with_sheets(compiled.book, with_views(compiled.book, compiled.calls, compiled.season))
    yield "sheets", time.process_time() - began
    build = Build(season, "", "2026-05-01", load_theme(), lambda done, of: None)
    began = time.process_time()
    build.book()
    yield "the book", time.process_time() - began
    began = time.process_time()
    build.pictures()
    yield "pictures of every call", time.process_time() - began

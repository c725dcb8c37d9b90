"""The handbook made: each sample compiled and drawn, the pages set with the pictures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from importlib.resources import files

from stemline.diagnostics.render import render
from stemline.emit.apart import apart
from stemline.emit.handbook_pages import (
    HandbookPart,
    PartKind,
    SamplePicture,
    handbook_html,
    handbook_pdf,
)
from stemline.football.play import Kind, Play, Season
from stemline.football.timing.levels import LEVELS
from stemline.handbook.page_parts import page_parts
from stemline.handbook.page_samples import PageSample, base_of, completed, samples_of
from stemline.outside.store import Store
from stemline.printing.drawings import Drawings, Showing
from stemline.resolve.sheets import with_sheets
from stemline.session import Session, no_collecting
from stemline.source import Source
from stemline.syntax.tree import Block
from stemline.theme import Size, Theme

NOTATION = ("reference.md", "ball.md", "week.md")
"""The pages of `grammar/` whose samples are drawn, all in the playbook of the first."""
PAGES = (*NOTATION, "figures.md", "season.md")
"""The pages of `grammar/` that the handbook holds, in its order."""
TITLE = "The stemline handbook"


def made_handbook(
    theme: Theme, kind: str, paper: str, date: str, progress: Callable[[int, int], None],
    store: Store | None = None,
) -> tuple[bytes, int]:  # fmt: skip
    """The handbook as a PDF, or where ``kind`` is ".html" as one file for a browser, and how many
    pictures it has. Raises as `made_book` does."""
    parts = _drawn("\n".join(map(_page, NOTATION)), theme, kind == ".html", progress, store)
    parts += [part for name in PAGES[len(NOTATION) :] for part in page_parts(_page(name))]
    count = sum(len(part.pictures) for part in parts)
    if kind == ".html":
        return handbook_html(parts, TITLE, theme, paper).encode(), count
    return apart(theme, count, handbook_pdf, tuple(parts), TITLE, theme, paper, date), count


def _page(name: str) -> str:
    return files("stemline.grammar").joinpath(name).read_text("utf-8")


@no_collecting()
def _drawn(
    page: str, theme: Theme, svg: bool, progress: Callable[[int, int], None], store: Store | None
) -> list[HandbookPart]:
    """The page's parts, each sample with what it draws."""
    samples = samples_of(page)
    base = base_of(samples)
    by_line = {sample.line: sample for sample in samples}
    parts: list[HandbookPart] = []
    for part in page_parts(page):
        sample = by_line.get(part.level) if part.kind is PartKind.PLAY else None
        if sample is not None:
            pictures = _pictures(sample, base, theme, svg, store)
            part = replace(part, pictures=pictures)
            progress(1 + samples.index(sample), len(samples))
        parts.append(part)
    return parts


def _pictures(
    sample: PageSample, base: PageSample, theme: Theme, svg: bool, store: Store | None
) -> tuple[SamplePicture, ...]:
    # A step of the first playbook is drawn with the steps that follow it.
    text = base if sample.word == "base" else sample
    sources = [Source(f"{n}.play", each) for n, each in enumerate(completed(text, base))]
    compiled = Session(sources, "handbook")
    season, unmade = compiled.pictured("")
    wrong = render(unmade, {s.name: s for s in sources})
    assert season is not None and compiled.book is not None, wrong
    shown = with_sheets(compiled.book, season, compiled.expander)
    drawings = Drawings(theme, LEVELS[season.level], store)
    found = []
    for number, (title, play) in enumerate(drawn_of(sample.blocks, shown)):
        duties = play.kind is Kind.PASS and play.defence is not None
        id_ = f"sample-{sample.line}-{number}"
        art = drawings.art(id_, play, Showing(_size(sample), duties=duties), svg=svg, ids=f"{id_}-")
        found.append(SamplePicture(title, art))
    return tuple(found)


def _size(sample: PageSample) -> Size:
    """Two quarters stand to the width of a page, and three small pictures."""
    return Size.QUARTER if len(sample.blocks) < 3 else Size.THUMB


def drawn_of(blocks: Sequence[Block], season: Season) -> Iterator[tuple[str, Play]]:
    """What each block draws, with its title: a concept its plain call, a tag its own, a look and
    a protection the first set it is shown in. A block that draws nothing has none."""
    stands = {("formation", s.name): s.view for s in season.formations}
    stands |= {("motion", s.name): s.view for s in season.motions}
    stands |= {("route", s.name): s.view for s in season.routes}
    stands |= {("look", s.name): s.views[0] for s in season.looks if s.views}
    stands |= {("protection", s.name): s.views[0] for s in season.protections if s.views}
    held = {(kind, name.casefold()): play for (kind, name), play in stands.items()}
    for block in blocks:
        name = block.name.text
        if block.kind in ("concept", "run"):
            calls = [p for p in season.plays if p.call.concept.casefold() == name.casefold()]
            for play in calls[:1]:
                yield play.call.spoken, play
        elif block.kind == "tag":
            calls = [p for p in season.plays if name in p.call.tags]
            for play in calls[:1]:
                yield play.call.spoken, play
        elif (block.kind, name.casefold()) in held:
            yield name, held[block.kind, name.casefold()]

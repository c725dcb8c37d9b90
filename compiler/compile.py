"""The whole compiler in one function: texts in, a proved season and its diagnostics out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemline.checks.formation import check_men, check_places
from stemline.checks.jobs import check_feet, check_jobs
from stemline.checks.keeps import check_keeps
from stemline.checks.needs import check_needs
from stemline.diagnostics.model import Diagnostic
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play, Season
from stemline.resolve.alignment import line_up
from stemline.resolve.definitions import Playbook
from stemline.resolve.expand import Order, field_of
from stemline.resolve.merge import merged, quarrels
from stemline.resolve.read_playbook import read_playbook
from stemline.resolve.season import Calls, all_calls, gathered, season
from stemline.source import Source
from stemline.syntax.parser import parse


@dataclass(frozen=True)
class Compiled:
    """What came of a playbook's texts. The book and season are None where nothing can be counted.

    A season with errors holds only the calls that are right.
    """

    book: Playbook | None
    calls: Calls
    season: Season | None
    diagnostics: tuple[Diagnostic, ...]

    @property
    def failed(self) -> bool:
        return any(d.is_error for d in self.diagnostics)


def compile_texts(sources: Sequence[Source], folder: str) -> Compiled:
    """Parse, read, expand and prove. ``folder`` is only for messages about the whole playbook."""
    parsed = [parse(source) for source in sources]
    found = [d for _, problems in parsed for d in problems]
    book, problems = read_playbook([document for document, _ in parsed], found, folder)
    found += problems
    if book is None:
        return Compiled(None, Calls(()), None, tuple(found))
    found += gathered(_formations(book))
    calls, problems = all_calls(book)
    found += problems
    made, problems = season(book, calls, lambda *args: _prove(book, *args))
    found += problems
    return Compiled(book, calls, made, tuple(dict.fromkeys(found)))


def _formations(book: Playbook) -> Iterable[Diagnostic]:
    """Every formation to both sides from every spot, whether a call uses it or not."""
    for formation in book.formations.values():
        if formation.broken:
            continue
        for spot in BallSpot:
            for side in Side:
                field = field_of(book, spot)
                _, men, found = line_up(book, formation, side, field)
                yield from found
                if men:
                    yield from check_men(men, field, formation.name, formation.span)
                    yield from check_places(men, field, formation.name)


def _prove(book: Playbook, play: Play, plain: Play | None, order: Order) -> Iterable[Diagnostic]:
    tags = [book.tags[order.concept, tag] for tag in order.tags]
    body = merged(book.concepts[order.concept].body, tags)
    quarrel = quarrels(tags, order.tags_span)
    if quarrel:
        yield from quarrel
        return
    yield from check_jobs(play)
    yield from check_feet(play)
    yield from check_needs(play, body.needs)
    if plain is not None:
        for tag in tags:
            # What another tag of the call changes without a promise is not this one's fault.
            shared = set.intersection(*({keep for keep, _ in t.keeps} for t in tags))
            keeps = [(keep, span) for keep, span in tag.keeps if keep in shared]
            yield from check_keeps(tag.name, keeps, plain, play)

"""A book's page models as plain text, one line a thing, for snapshots that read well."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.book.content.block_table import Fronts
from stemline.book.content.book import Book
from stemline.book.content.dressed_page import DressedPage, DressGroup
from stemline.book.content.index import IndexGroup
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.kinds.protection_page import ProtectionPage
from stemline.book.content.page import Page, Remark
from stemline.book.content.quarterback_strip import ReadLook


def book_text(book: Book) -> str:
    return "\n".join(_lines(book)) + "\n"


def _lines(book: Book) -> Iterator[str]:
    yield f"title: {book.title}"
    yield f"footer: {book.footer} | {book.caution}"
    yield f"cover: {book.cover.team} / {book.cover.season} / {book.cover.code}"
    yield f"  {book.cover.edition}"
    yield f"  {book.cover.about}"
    yield from (f"  says {line}" for line in book.cover.says)
    yield from (f"  caution {line}" for line in book.cover.cautions)
    yield "reading:"
    yield from (f"  {symbol.id} {symbol.caption}" for symbol in book.reading.symbols)
    yield from (f"  {note.label}" for note in book.reading.notes)
    yield "care:"
    yield from (f"  {level.number} {level.name}: {level.full}" for level in book.care.levels)
    yield from (f"  {_note(note)}" for note in book.care.notes)
    for page in book.pages:
        yield from _page(page)
    for number, columns in enumerate(book.index.pages, 1):
        yield f"index page {number}: columns of {', '.join(str(len(column)) for column in columns)}"
    yield from (f"  {line.call} -> {line.id}" for line in book.index.calls)
    yield from _groups("formation", book.index.formations)
    yield from _groups("tag", book.index.tags)


def _page(page: Page) -> Iterator[str]:
    if isinstance(page, ConceptPage):
        yield from (f"section {page.family}",) if page.opens else ()
        yield from _concept(page)
    elif isinstance(page, ProtectionPage):
        yield from _protection(page)
    elif isinstance(page, LookPage):
        yield from _defence(page)
    elif isinstance(page, DressedPage):
        yield f"  dressed {page.name} [{page.id}]"
        for group in page.groups:
            yield from _group(group)
    else:
        yield f"page {page.name} [{page.id}]"
        yield from (f"    {entry.call} {entry.aside} [{entry.id}]" for entry in page.entries)


def _concept(page: ConceptPage) -> Iterator[str]:
    opens = " (opens its family)" if page.opens else ""
    yield f"  concept {page.name} [{page.id}]{opens}: {page.serves}"
    yield f"    base {_base(page)} {page.drawn}"
    yield f"    idea {page.idea}"
    yield f"    columns {' | '.join(page.columns)}"
    yield f"    own {', '.join(own.man for own in page.own)}"
    for row in page.rows:
        changes = " / ".join(_note(note) for note in row.changes)
        yield f"    {' | '.join(row.men)} : {row.role} : {row.job} : {changes}"
    if page.line:
        jobs = " / ".join(map(_note, page.line.jobs))
        changes = " / ".join(map(_note, page.line.changes))
        yield f"    line : {page.line.protection} : {page.line.job}{jobs} : {changes}"
    for key in page.keys:
        choices = " / ".join(_note(choice) for choice in key.choices)
        calls = f"with {key.calls} " if key.calls else ""
        yield f"    key {calls}{key.described} = {key.man} : {choices}"
        yield from (f"      {_note(look)}" for look in key.looks)
    if page.fronts:
        yield from _fronts(page.fronts)
    if page.quarterback:
        qb = page.quarterback
        for stop in qb.stops:
            yield f"    on {stop.name} ({stop.words}): {', '.join(map(_look, stop.looks))}"
        yield f"    then {', '.join(map(_look, qb.loose))}"
        yield f"    pressure {', '.join(map(_look, qb.pressure))}; skips {', '.join(qb.skipped)}"
        yield from (f"    {_note(note)}" for note in qb.notes)
        yield from (f"    other calls {_note(note)}" for note in qb.changes)
    yield from (f"    says {line}" for line in page.says)
    yield from (f"    caution {line}" for line in page.cautions)


def _group(group: DressGroup) -> Iterator[str]:
    yield f"    of {group.name} [{group.id}]"
    for one in group.calls:
        jobs = " / ".join(f"{job.man} {job.role}: {job.words}" for job in one.jobs)
        yield f"      {one.calls}: {jobs} {one.says}".rstrip()
    for entry in group.entries:
        kind = "dressed" if entry.listed else "view"
        also = f" also {', '.join(entry.also)}" if entry.also else ""
        yield f"      {kind} {entry.call} {entry.aside}{also} [{entry.id}]"
        yield from (f"        {_note(note)}" for note in entry.changes)
    yield from (f"      said {_note(note)}" for note in group.said)


def _dressed(page: Page) -> Iterator[str]:
    for entry in page.dressups:
        kind = "dressed" if entry.listed else "view"
        yield f"    {kind} {entry.call} {entry.aside}".rstrip() + f" [{entry.id}]"
        yield from (f"      {_note(note)}" for note in entry.changes)


def _fronts(table: Fronts) -> Iterator[str]:
    yield f"    fronts {' | '.join(f'{man} {place}' for man, place in table.men)}"
    yield f"      rules {' | '.join(map(_note, table.rules))}"
    for row in table.rows:
        yield f"      {row.looks}: {' | '.join(row.blocks)}"
        chasing = f", {table.chasing} {row.chasing}" if table.chasing else ""
        yield f"        {table.key} {row.key}, {table.free} {row.free}{chasing}"


def _protection(page: ProtectionPage) -> Iterator[str]:
    yield f"  protection {page.name} [{page.id}]: {page.words}"
    yield f"    base {_base(page)} {page.base.aside if page.base else ''}"
    yield from (f"    view {view.call} {view.aside} [{view.id}]" for view in page.views)
    yield from (f"    hot {_note(note)}" for note in page.hot)
    if page.fronts:
        yield from _fronts(page.fronts)
    yield from (f"    says {line}" for line in page.says)


def _defence(page: LookPage) -> Iterator[str]:
    yield f"  look {page.name} [{page.id}]: {page.shows}"
    yield f"    base {_base(page)} {page.drawn}"
    for row in page.rows:
        changes = " / ".join(_note(note) for note in row.changes)
        yield f"    {row.man} : {row.place} : {row.duty} : {changes}"
    yield from (f"    says {line}" for line in page.says)
    yield from _dressed(page)


def _base(page: Page) -> str:
    assert page.base is not None
    return f"{page.base.call} [{page.base.id}]"


def _groups(kind: str, groups: tuple[IndexGroup, ...]) -> Iterator[str]:
    for group in groups:
        yield f"  {kind} {group.title}: {', '.join(line.id for line in group.lines)}"


def _look(look: ReadLook) -> str:
    partner = f" with {look.partner}" if look.partner else ""
    return f"{look.number} {look.target} {look.men}{partner}"


def _note(note: Remark) -> str:
    return f"{note.label}: {note.words}"

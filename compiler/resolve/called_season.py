"""Plays with what their playbook says of its team, its code and their concepts: a season."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.football.play import ConceptSheet, Play, Season, Team
from stemline.football.rulebook.care_rules import care_rules
from stemline.football.rulebook.rules import noted
from stemline.playbook.concepts import Body, Concept
from stemline.playbook.note_definitions import Addressed
from stemline.playbook.playbook import Playbook
from stemline.read.league import league_words
from stemline.resolve.noting import worded


def season_of(book: Playbook, plays: Sequence[Play]) -> Season:
    """These plays with what the playbook says of its team, its code and their concepts."""
    settings, code = book.settings, book.settings.code
    care = care_rules(code.key)
    shown = {p.call.concept for p in plays}
    families = book.families
    ordered = sorted(book.concepts.values(), key=lambda c: families.index(c.family))
    return Season(
        team=Team(
            settings.name,
            settings.season,
            settings.says,
            settings.cautions,
            settings.right_handed,
        ),
        code_title=code.title,
        authority=code.authority,
        low_block=noted(code.low_block),
        crossing_contact=noted(code.crossing_contact),
        blindside_block=noted(code.blindside_block),
        behind_block=noted(code.behind_block),
        chop_block=noted(code.chop_block),
        league=league_words(code),
        level=settings.level.name,
        past_line=noted(care.past_line),
        care=tuple((rule.label, noted(rule.text)) for rule in care.notes),
        concepts=tuple(_sheet(book, c, plays) for c in ordered if c.name in shown),
        plays=tuple(plays),
        letters=tuple(dict.fromkeys(person.letter for person in book.people.values())),
        every_call=settings.every_call,
        signs=tuple(
            (f"{one.kind} {one.name}", one.signal, one.word)
            for one in book.taught
            if one.signal or one.word
        ),
    )


def _says(book: Playbook, body: Body, plays: Sequence[Play]) -> tuple[str, ...]:
    """What the coach says of a concept, each word with its condition, where a call may have it."""
    sets = dict.fromkeys((play.call.formation.casefold(), play.shape) for play in plays)
    made = list(body.says)
    for note in (n for n in body.notes if n.who is Addressed.ALL):
        there = {name: replace(note, guard=note.guard.called_in(name)) for name, _ in sets}
        words = dict.fromkeys(worded(there[name], book.receivers, shape) for name, shape in sets)
        told = [each for each in words if each]
        # Where some sets settle it and others do not, the condition stands as it is written.
        made += told if len(words) == 1 else [f"When {note.guard.text}: {note.words}"] * bool(told)
    return tuple(made)


def _sheet(book: Playbook, concept: Concept, plays: Sequence[Play]) -> ConceptSheet:
    mine = [p for p in plays if p.call.concept == concept.name]
    shapes = dict.fromkeys("{}x{}".format(*p.shape) for p in mine)
    called = {tag for play in mine for tag in play.call.tags}
    tags = [
        tag
        for (owner, _), tag in book.tags.items()
        if owner == concept.name.casefold() and (tag.name in called or not tag.shared)
    ]
    return ConceptSheet(
        name=concept.name,
        family=concept.family,
        feet=mine[0].feet,
        says=_says(book, concept.body, mine),
        cautions=(*concept.body.cautions, *(c for t in tags for c in t.body.cautions)),
        serves=tuple(shapes),
        tags=tuple(
            (t.name, (*([t.tempo.title()] if t.tempo else ()), *_says(book, t.body, mine)))
            for t in tags
        ),
        span=concept.span,
        kind=concept.kind,
        idea=concept.body.idea,
        suits=tuple(
            situation.words
            for one in book.taught
            if one.key == (concept.kind.value, concept.name.casefold())
            for situation in one.suits
        ),
    )

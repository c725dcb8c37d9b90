"""Trees → a `Playbook`: every block read, all mistakes collected."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from stemline.diagnostics.catalogue.football import E441, E446
from stemline.diagnostics.catalogue.lesson_words import E735
from stemline.diagnostics.catalogue.names import E310
from stemline.diagnostics.catalogue.protections import W699
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import Decide, Route, Stroke
from stemline.football.play import Kind
from stemline.football.players import Position
from stemline.playbook.concepts import Body, Tag
from stemline.playbook.dress_ups import Dress
from stemline.playbook.formations import Person
from stemline.playbook.install_definitions import InstallDef
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.playbook import Playbook, Settings
from stemline.playbook.protection_definitions import Protection
from stemline.playbook.week_definitions import WeekDef
from stemline.read.name_table import Blocks, name_key
from stemline.read.own_letters import letters_of
from stemline.read.own_men import with_own_men
from stemline.read.read_bodies import Bodies
from stemline.read.read_dresses import KnownNames, read_dress
from stemline.read.read_formations import Formations
from stemline.read.read_installs import read_install
from stemline.read.read_looks import read_look
from stemline.read.read_protections import read_protection
from stemline.read.read_routes import read_behind, read_decide, read_strokes
from stemline.read.read_settings import read_settings
from stemline.read.read_tags import Tags
from stemline.read.read_teaching import read_teaching, with_tempos
from stemline.read.read_weeks import read_week
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.syntax.tree import Block, Document


def read_playbook(
    documents: Sequence[Document], mistakes: Sequence[Diagnostic], folder: str
) -> tuple[Playbook | None, tuple[Diagnostic, ...]]:
    """The playbook that the documents make, as far as it could be read.

    ``mistakes`` are the parser's, so that a block with an unread line is known to be broken.

    None where there is no playbook block with a known code: without it nothing can be counted. Nor
    is a playbook read that has more blocks than are looked through.
    """
    blocks = Blocks(with_own_men(documents), mistakes)
    found = blocks.found
    if blocks.overfull:
        return None, tuple(found)
    found += blocks.check_extends()
    settings = read_settings(blocks, folder, found)
    if settings is None:
        return None, tuple(found)
    return _BlockReader(blocks, settings, found).playbook(), tuple(found)


def _positions(people: Iterable[Person], letters: Iterable[str]) -> tuple[Position, ...]:
    """The positions that somebody has, linemen's too; a letter of no personnel is a slot, and one
    that begins with Q the quarterback."""
    named = {person.letter: person.position for person in people}
    line = (Position.TACKLE, Position.GUARD, Position.CENTRE)
    usual = {True: Position.QUARTERBACK, False: Position.SLOT}
    had = {named.get(letter, usual[letter.startswith("Q")]) for letter in (*named, *letters)}
    return tuple(position for position in Position if position in (*had, *line))


class _BlockReader:
    """Reads one kind of block after another; what was read before is known to the next."""

    def __init__(self, blocks: Blocks, settings: Settings, found: list[Diagnostic]) -> None:
        self.blocks = blocks
        self.settings = settings
        self.found = found
        self.receivers = settings.code.receivers
        self.broken_routes: set[str] = set()

    def playbook(self) -> Playbook:
        men = Formations(self.blocks, self.settings, self.found)
        people = men.people()
        letters = men.letters(people)
        called = letters_of(self.blocks.of("formation"), people)
        routes = self._routes()
        bodies = Bodies(
            self.blocks, self.settings, routes, self.broken_routes, self.found,
            _positions(people.values(), letters), called,
        )  # fmt: skip
        formations = {
            name_key(b.name): men.formation(b, letters) for b in self.blocks.of("formation")
        }
        motions = {name_key(b.name): men.motion(b, letters) for b in self.blocks.of("motion")}
        concepts = {
            name_key(b.name): bodies.concept(b) for kind in Kind for b in self.blocks.of(kind.value)
        }
        concepts = {
            key: replace(c, body=bodies.joined(c.body, Body(), concepts))
            for key, c in concepts.items()
        }
        tags = Tags(bodies, concepts)
        written = tags.written()
        looks = self._looks(called)
        taught, wrong = read_teaching(self.blocks.taught.values(), self.settings.code)
        self.found += wrong
        written.update(with_tempos(written, taught))
        return Playbook(
            settings=self.settings,
            people=people,
            formations=formations,
            motions=motions,
            routes=routes,
            concepts=concepts,
            tags=written,
            dresses=self._dresses(tags, written, letters),
            looks={
                k: look for k, look in looks.items() if not (look.part or self._with_a_week(look))
            },
            protections=self._protections(called, routes),
            weeks=self._weeks(),
            install=self._install(),
            taught=taught,
            week_looks={
                k: look for k, look in looks.items() if self._with_a_week(look) and not look.part
            },
        )

    def _broken(self, block: Block, before: int) -> bool:
        """Whether the parser, or the reading since ``before``, could not read a line of it."""
        return self.blocks.is_broken(block, self.found[before:])

    def _routes(self) -> dict[str, Route]:
        routes = dict(LIBRARY)
        for block in self.blocks.of("route"):
            name = name_key(block.name)
            strokes: list[Stroke] = []
            depth: float | None = None
            decides: Decide | None = None
            says: list[str] = []
            before = len(self.found)
            for fact in self.blocks.facts(block):
                try:
                    if fact.key == "depth":
                        words = Words([one_phrase(fact.value, "yards", fact.span)])
                        depth = words.take_number()
                        if depth is None:
                            raise words.miss(E441)
                        if read_behind(words):
                            depth = -depth
                        words.finish("the depth of a route")
                    elif fact.key == "stroke" and fact.value is not None:
                        strokes += read_strokes(fact.value)
                    elif fact.key == "decides":
                        decides = read_decide(fact)
                    elif fact.key == "say":
                        says.append(string_of(fact.value, fact.span))
                except Misread as miss:
                    self.found.append(miss.diagnostic)
            known = LIBRARY.get(name)
            if not strokes and known is None and not self._broken(block, before):
                self.found.append(E446(name=block.name.text).at(block.name.span))
            if self._broken(block, before):
                self.broken_routes.add(name)
            base = known or Route(name, 0, (), taught=depth is not None)
            routes[name] = replace(
                base,
                name=block.name.text.casefold(),
                depth=base.depth if depth is None else depth,
                strokes=tuple(strokes) or base.strokes,
                taught=depth is not None or base.taught,
                decides=decides,
                source="this playbook",
                says=tuple(says),
            )
        return routes

    def _looks(self, letters: Mapping[str, str]) -> dict[str, LookDef]:
        looks = {}
        for block in self.blocks.of("look"):
            looks[name_key(block.name)], found = read_look(
                block, self.blocks, self.settings, letters
            )
            self.found += found
        return looks

    def _with_a_week(self, look: Block | LookDef) -> bool:
        """Whether a look stands in a file with a week: it is an opponent's."""
        return look.span.source in {block.span.source for block in self.blocks.of("week")}

    def _weeks(self) -> dict[str, WeekDef]:
        weeks = {}
        for block in self.blocks.of("week"):
            weeks[name_key(block.name)], found = read_week(
                block, self.blocks.is_broken(block), tuple(self.blocks.names("look"))
            )
            self.found += found
        return weeks

    def _install(self) -> InstallDef | None:
        """The install; a playbook has one, so that no two can put in the same thing."""
        blocks = self.blocks.of("install")
        for extra in blocks[1:]:
            first = (Related(blocks[0].name.span, "the first is here"),)
            self.found.append(E735().at(extra.name.span, related=first))
        if not blocks:
            return None
        install, found = read_install(blocks[0], self.blocks.is_broken(blocks[0]))
        self.found += found
        return install

    def _protections(
        self, letters: Mapping[str, str], routes: Mapping[str, Route]
    ) -> dict[str, Protection]:
        protections = {}
        for block in self.blocks.of("protection"):
            made, found = read_protection(block, self.blocks, self.settings, letters, routes)
            key = name_key(block.name)
            protections[key] = made
            self.found += found
            if key in PROTECTIONS and not made.broken:
                self.found.append(W699(name=made.name, ready=key).at(block.name.span))
        return protections

    def _dresses(
        self, reader: Tags, tags: dict[tuple[str, str], Tag], letters: Sequence[str]
    ) -> tuple[Dress, ...]:
        dresses = []
        headless = {name_key(block.name) for block in self.blocks.of("tag") if not block.joins}
        for block in self.blocks.of("dress"):
            concept = reader.meant(block.name)
            if concept is None:
                continue
            known = KnownNames(
                tuple(self.blocks.names("formation")),
                tuple(self.blocks.names("motion")),
                tuple(t.name for (owner, _), t in tags.items() if owner == concept),
                tuple(b.name.text for b in self.blocks.of("look") if not self._with_a_week(b)),
                partial(reader.called_route, concept, letters, tags),
            )
            broken = self.blocks.is_broken(block)
            dress, found = read_dress(block, concept, block.facts, known, broken)
            self.found += (d for d in found if not _is_headless(d, headless))
            if concept != name_key(block.name):
                dress = replace(dress, formations=(), never=(), only=(), aliases=())
            dresses.append(dress)
        return tuple(dresses)


def _is_headless(d: Diagnostic, tags: Collection[str]) -> bool:
    """Whether a tag is not known because its first line does not say for what it is."""
    said = d.said
    return isinstance(said, E310) and said.kind == "tag" and said.found.casefold() in tags

"""Trees → a `Playbook`: every block read, all mistakes collected."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial

from stemline.diagnostics.catalogue.football import E441, E446, E471, E472, E473
from stemline.diagnostics.catalogue.install_blocks import E735
from stemline.diagnostics.catalogue.names import E301, E310
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import Decide, Route, Stroke
from stemline.football.play import Kind
from stemline.playbook.concepts import Body, Concept, RouteJob, Tag
from stemline.playbook.dress_ups import Dress
from stemline.playbook.install_definitions import InstallDef
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.playbook import Playbook, Settings
from stemline.playbook.protection_definitions import Protection
from stemline.playbook.role_rules import Choice, Lettered
from stemline.playbook.run_definitions import CARRIER
from stemline.playbook.said import Said
from stemline.playbook.week_definitions import WeekDef
from stemline.read.name_table import Blocks, name_key
from stemline.read.own_men import with_own_men
from stemline.read.read_any import AnyConcept, read_any
from stemline.read.read_concepts import CENTRE, Scope, read_body, read_decide, subject_name
from stemline.read.read_dresses import KnownNames, read_dress
from stemline.read.read_formations import Formations
from stemline.read.read_guards import read_guard
from stemline.read.read_installs import read_install
from stemline.read.read_looks import read_look
from stemline.read.read_protections import read_protection
from stemline.read.read_roles import read_men
from stemline.read.read_routes import read_behind, read_run, read_strokes
from stemline.read.read_settings import read_settings
from stemline.read.read_weeks import read_week
from stemline.read.run_joins import unfinished, with_run
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.syntax.tree import Block, Document, Fact, Linked, Phrase


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
        routes = self._routes()
        formations = {
            name_key(b.name): men.formation(b, letters) for b in self.blocks.of("formation")
        }
        motions = {name_key(b.name): men.motion(b, letters) for b in self.blocks.of("motion")}
        concepts = {
            name_key(b.name): self._concept(b, routes)
            for kind in Kind
            for b in self.blocks.of(kind.value)
        }
        concepts = {
            key: replace(c, body=self._joined(c.body, Body(), concepts))
            for key, c in concepts.items()
        }
        tags = self._tags(routes, concepts)
        looks = self._looks()
        return Playbook(
            settings=self.settings,
            people=people,
            formations=formations,
            motions=motions,
            routes=routes,
            concepts=concepts,
            tags=tags,
            dresses=self._dresses(concepts, tags, routes, letters),
            looks={
                k: look for k, look in looks.items() if not (look.part or self._with_a_week(look))
            },
            protections=self._protections(),
            weeks=self._weeks(),
            install=self._install(),
            week_looks={
                k: look for k, look in looks.items() if self._with_a_week(look) and not look.part
            },
        )

    def _broken(self, block: Block, before: int) -> bool:
        """Whether the parser, or the reading since ``before``, could not read a line of it."""
        return self.blocks.is_broken(block, self.found[before:])

    # Routes, concepts, tags.

    def _routes(self) -> dict[str, Route]:
        routes = dict(LIBRARY)
        for block in self.blocks.of("route"):
            name = name_key(block.name)
            strokes: list[Stroke] = []
            depth: float | None = None
            decides: Decide | None = None
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
            )
        return routes

    def _scope(self, blocks: Sequence[Block], routes: Mapping[str, Route]) -> Scope:
        roles: dict[str, None] = {}
        spots: dict[str, None] = {}
        men: dict[str, Choice] = {}
        told = {subject_name(p) for b in blocks for f in b.facts if f.verb for p in f.subject}
        for block in blocks:
            for fact in block.facts:
                if fact.key == "is":
                    roles.update(dict.fromkeys(subject_name(p) for p in fact.subject))
                if fact.key == "runs" and self.settings.code.all_eligible:
                    named = {subject_name(p) for p in fact.subject}
                    roles.update(dict.fromkeys(named & {CENTRE}))
                if fact.verb is not None:
                    for subject in fact.subject:
                        men |= read_men(subject)
                if fact.key == "join":  # the run brings him
                    roles[CARRIER] = None
                head = fact.value.head if isinstance(fact.value, Linked) else None
                if fact.key == "spot" and isinstance(head, Phrase):
                    name = subject_name(head)
                    if f"spot {name}" in told:  # no spot: a role of that name does something
                        roles[f"spot {name}"] = None
                    else:
                        spots[name] = None
        by_place = {name: choice for name, choice in men.items() if name not in roles}
        return Scope(
            self.receivers,
            routes,
            (*roles, *by_place),
            tuple(spots),
            self._named_protections(),
            self.settings.code.all_eligible,
            by_place,
        )

    def _lineage(self, block: Block) -> list[Block]:
        return [*reversed(self.blocks.ancestors(block)), block]

    def _concept(self, block: Block, routes: Mapping[str, Route]) -> Concept:
        facts = self.blocks.facts(block)
        before = len(self.found)
        scope = self._scope(self._lineage(block), routes)
        body, _, found = read_body(facts, scope)
        self.found += found
        broken = self._broken(block, before) or self._runs_broken(body)
        for role, said in body.rules.items():
            if role not in (*body.jobs, *scope.by_place) and not body.swaps and not broken:
                self.found.append(E471(role=role).at(said[0].span))
        if block.kind == Kind.RUN.value and not broken:
            self.found += unfinished(body, block.name.span, self.settings.code.line)
        broken = broken or self._broken(block, before)
        family = next((f for f in facts if f.key == "family"), None)
        title = _file_title(block) if family is None else _family(family)
        kind = Kind(block.kind)
        return Concept(block.name.text, title, body, block.name.span, broken, kind)

    def _looks(self) -> dict[str, LookDef]:
        looks = {}
        for block in self.blocks.of("look"):
            looks[name_key(block.name)], found = read_look(block, self.blocks, self.settings)
            self.found += found
        return looks

    def _with_a_week(self, look: Block | LookDef) -> bool:
        """Whether a look stands in a file with a week: it is an opponent's."""
        return look.span.source in {block.span.source for block in self.blocks.of("week")}

    def _weeks(self) -> dict[str, WeekDef]:
        weeks = {}
        for block in self.blocks.of("week"):
            weeks[name_key(block.name)], found = read_week(block, self.blocks.is_broken(block))
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

    def _named_protections(self) -> tuple[str, ...]:
        """What a concept may protect with, as the coach spells it; his own come first."""
        own = tuple(self.blocks.names("protection"))
        known = {name.casefold() for name in own}
        return (*own, *(name for name in PROTECTIONS if name not in known))

    def _protections(self) -> dict[str, Protection]:
        protections = {}
        for block in self.blocks.of("protection"):
            made, found = read_protection(block, self.blocks, self.settings)
            protections[name_key(block.name)] = made
            self.found += found
        return protections

    def _joined(self, body: Body, owner: Body, concepts: Mapping[str, Concept]) -> Body:
        """A body with the run that it joins; ``owner`` is the body it is laid over."""
        for join in body.joins:
            run = concepts.get(join.name)
            if run is not None and run.kind is Kind.RUN:
                return with_run(body, owner, run.body)
            names = [c.name for c in concepts.values() if c.kind is Kind.RUN]
            near = nearest(join.name, names)
            told = E310(kind="run", found=join.name, choices=either(names))
            self.found.append(told.at(join.span, nearest=near))
        return body

    def _runs_broken(self, body: Body) -> bool:
        """Whether a role runs a route of this playbook that could not be read."""
        jobs = (said.value for told in body.jobs.values() for said in told)
        return any(isinstance(j, RouteJob) and j.route.name in self.broken_routes for j in jobs)

    def _tags(
        self, routes: Mapping[str, Route], concepts: Mapping[str, Concept]
    ) -> dict[tuple[str, str], Tag]:
        tags: dict[tuple[str, str], Tag] = {}
        for block in self.blocks.of("tag"):
            owner = block.join("for")
            if owner is None:
                continue
            if (many := read_any(owner)) is not None:
                meant = self._any(many, owner, concepts)
            else:
                one = self._meant(owner, concepts)
                meant = [one] if one is not None else []
            told: list[Diagnostic] = []
            for key in meant:
                tag, found = self._tag(block, key, routes, concepts, alone=many is None)
                tag = replace(tag, shared=many is not None or self.blocks.has_many(block))
                told += [d for d in found if d not in told]
                first = tags.setdefault((key, name_key(block.name)), tag)
                if first is not tag and first.span != tag.span:
                    again = E301(kind="tag", name=tag.name, times="twice")
                    defined = (Related(first.span, "first defined here"),)
                    told.append(again.at(block.name.span, related=defined))
            self.found += told
        return tags

    def _tag(
        self,
        block: Block,
        meant: str,
        routes: Mapping[str, Route],
        concepts: Mapping[str, Concept],
        *,
        alone: bool,
    ) -> tuple[Tag, list[Diagnostic]]:
        """The tag as it is for one concept; ``alone`` tells that it may name the concept's roles,
        which a tag for any concept cannot: two concepts call different men `clear`."""
        concept = self.blocks.by_key[concepts[meant].kind.value, meant, ""]
        lineage = self._lineage(concept) if alone else []
        own = self._scope(lineage, routes).roles
        scope = replace(self._scope([*lineage, block], routes), calls_men=True, owned=own)
        body, keeps, found = read_body(block.facts, scope)
        before = len(self.found)
        body = self._joined(body, concepts[meant].body, concepts)
        found += self.found[before:]
        del self.found[before:]
        broken = self.blocks.is_broken(block, found) or self._runs_broken(body)
        return Tag(block.name.text, meant, body, keeps, block.name.span, broken), found

    def _any(self, said: AnyConcept, owner: Phrase, concepts: Mapping[str, Concept]) -> list[str]:
        """The keys of the concepts that `any pass but Crossers` means."""
        families = {c.family.casefold() for c in concepts.values()}
        if said.what not in ("call", "pass", "run", *families):
            choices = ("pass", "run", "call", *sorted({c.family for c in concepts.values()}))
            near = nearest(said.what, choices)
            self.found.append(
                E472(found=said.what, choices=either(choices)).at(owner.span, nearest=near)
            )
            return []
        without = [self._meant(phrase, concepts) for phrase in said.but]
        return [
            key
            for key, concept in concepts.items()
            if key not in without
            and said.what in ("call", concept.kind_word, concept.family.casefold())
        ]

    def _called_route(
        self,
        concept: str,
        routes: Mapping[str, Route],
        letters: Sequence[str],
        tags: dict[tuple[str, str], Tag],
        said: Phrase,
    ) -> str | None:
        """The tag of a route that a call gives one man: `X runs fade` is called *X Fade*."""
        words = [atom.word for atom in said.atoms]
        if "runs" not in words[1:-1]:
            return None
        at = words.index("runs")
        who, route = Phrase(said.atoms[:at]), Phrase(said.atoms[at + 1 :])
        men: Mapping[str, Choice] = read_men(who)
        if not men and who.text in letters:
            men = {who.text: Lettered(who.text)}
        if not men:
            raise Words([who]).miss(E473, letters)
        always = read_guard(None, self.receivers)
        job = Said(read_run(route, said.span, routes, ()), always, said.span)
        name = f"{_titled(who.text)} {_titled(route.text)}"
        body = Body(
            jobs=dict.fromkeys(men, (job,)),
            called={man: Said(choice, always, said.span) for man, choice in men.items()},
        )
        tag = Tag(name, concept, body, (), said.span, False)
        tags.setdefault((concept, name.casefold()), tag)
        return name.casefold()

    def _meant(self, name: Phrase, concepts: Mapping[str, Concept]) -> str | None:
        """The key of the concept that a tag or a dress-up names.

        A misspelt one is reported and read as the nearest, so that its lines are looked at and
        what hangs on them is known; nothing is called by it.
        """
        if name_key(name) in concepts:
            return name_key(name)
        names = [c.name for c in concepts.values()]
        near = nearest(name.text, names)
        told = E310(kind="concept", found=name.text, choices=either(names))
        self.found.append(told.at(name.span, nearest=near))
        return near[0].casefold() if near else None

    def _dresses(
        self,
        concepts: Mapping[str, Concept],
        tags: dict[tuple[str, str], Tag],
        routes: Mapping[str, Route],
        letters: Sequence[str],
    ) -> tuple[Dress, ...]:
        dresses = []
        for block in self.blocks.of("dress"):
            concept = self._meant(block.name, concepts)
            if concept is None:
                continue
            known = KnownNames(
                tuple(self.blocks.names("formation")),
                tuple(self.blocks.names("motion")),
                tuple(t.name for (owner, _), t in tags.items() if owner == concept),
                tuple(b.name.text for b in self.blocks.of("look") if not self._with_a_week(b)),
                partial(self._called_route, concept, routes, letters, tags),
            )
            broken = self.blocks.is_broken(block)
            dress, found = read_dress(block, concept, block.facts, known, broken)
            self.found += found
            if concept != name_key(block.name):
                dress = replace(dress, formations=(), never=(), only=(), aliases=())
            dresses.append(dress)
        return tuple(dresses)


def _titled(words: str) -> str:
    return " ".join(word[:1].upper() + word[1:] for word in words.split())


def _family(fact: Fact) -> str:
    return string_of(fact.value, fact.span)


def _file_title(block: Block) -> str:
    """The family of a concept that names none: its file's name, as a title."""
    stem = block.span.source.replace("\\", "/").rsplit("/", 1)[-1].rsplit(".", 1)[0]
    return stem.replace("-", " ").replace("_", " ").title()

"""Concepts and runs, and what their bodies share with the tags laid over them."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace

from stemline.diagnostics.catalogue.football import E471
from stemline.diagnostics.catalogue.names import E310
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.offence.strokes import Route
from stemline.football.play import Kind
from stemline.football.players import Position
from stemline.playbook.concepts import Body, Concept, RouteJob
from stemline.playbook.playbook import Settings
from stemline.playbook.role_rules import ByLetter, Choice
from stemline.playbook.run_definitions import CARRIER
from stemline.read.concept_scope import CENTRES, Scope
from stemline.read.name_table import Blocks, name_key
from stemline.read.own_letters import letters_in
from stemline.read.read_concepts import read_body, subject_name
from stemline.read.read_exchanges import with_the_ball
from stemline.read.read_roles import EVERYONE_ELSE, read_men
from stemline.read.run_joins import unfinished, with_partners, with_run
from stemline.read.runners import runners_of
from stemline.read.words import string_of
from stemline.syntax.tree import Block, Fact, Linked, Phrase, phrases


@dataclass(frozen=True)
class Bodies:
    """Reads bodies; ``broken_routes`` are those that could not be read, mistakes go into
    ``found``. ``positions`` are those that men of the playbook have, ``letters`` theirs by lower
    case."""

    blocks: Blocks
    settings: Settings
    routes: Mapping[str, Route]
    broken_routes: AbstractSet[str]
    found: list[Diagnostic]
    positions: Collection[Position]
    letters: Mapping[str, str]
    _scopes: dict[tuple[int, ...], Scope] = field(default_factory=dict, compare=False)
    """Those of bodies that were asked for, by their blocks, which all live as long as these: every
    tag asks for its concept's."""

    @property
    def receivers(self) -> int:
        return self.settings.code.receivers

    def _broken(self, block: Block, before: int) -> bool:
        return self.blocks.is_broken(block, self.found[before:])

    def concept(self, block: Block) -> Concept:
        """A concept or run, without the run that it joins."""
        facts = self.blocks.facts(block)
        facts = [*facts, *self._protected(facts)]
        before = len(self.found)
        scope = self.scope(self.lineage(block))
        body, _, found = read_body(facts, scope)
        if block.kind == Kind.RUN.value:
            body = with_partners(body)
        self.found.extend(found)
        broken = self._broken(block, before) or self.runs_broken(body)
        for role, said in body.rules.items():
            used = (*body.jobs, *scope.by_place, *with_the_ball(body))
            if role not in used and not body.swaps and not broken:
                self.found.append(E471(role=role).at(said[0].span))
        if block.kind == Kind.RUN.value and not broken:
            self.found.extend(unfinished(body, block.name.span, self.settings.code.line))
        broken = broken or self._broken(block, before)
        family = next((f for f in facts if f.key == "family"), None)
        title = _file_title(block) if family is None else _family(family)
        kind = Kind(block.kind)
        last = block.facts[-1].span if block.facts else block.name.span
        return Concept(block.name.text, title, body, block.name.span, broken, kind, last)

    def _protected(self, facts: Sequence[Fact]) -> Iterator[Fact]:
        """What the one protection that a concept names tells a man to check and then to run, as the
        line of the role that he has here and to which no line gives a job."""
        named = [f for f in facts if f.key == "protect"]
        told = {subject_name(p) for f in facts if f.key not in ("is", "says") for p in f.subject}
        roles = [f for f in facts if f.key == "is" and not told & {*map(subject_name, f.subject)}]
        if len(named) != 1 or not isinstance(named[0].value, Phrase):
            return
        own = [
            b for b in self.blocks.of("protection") if name_key(b.name) == name_key(named[0].value)
        ]
        for line in (f for b in own for f in self.blocks.facts(b) if f.key == "blocks"):
            said = list(phrases(line.value))
            if line.verb is None or len(said) < 2 or said[0].atoms[0].word != "check":
                continue
            runs = replace(line.verb, text="runs")  # a route, as in a line of the concept's own
            for role in roles:
                who = role.value
                if isinstance(who, Phrase) and subject_name(who) == subject_name(line.subject[0]):
                    yield replace(line, subject=role.subject, verb=runs)

    def scope(self, blocks: Sequence[Block]) -> Scope:
        """Who and what lines of a body may name, when ``blocks`` are all that it is made of."""
        known = tuple(map(id, blocks))
        if known not in self._scopes:
            self._scopes[known] = self._scope(blocks)
        return self._scopes[known]

    def _scope(self, blocks: Sequence[Block]) -> Scope:
        roles: dict[str, None] = {}
        spots: dict[str, None] = {}
        keys: dict[str, None] = {}
        men: dict[str, Choice] = {}
        told = {subject_name(p) for b in blocks for f in b.facts if f.verb for p in f.subject}
        for block in blocks:
            for fact in block.facts:
                key = fact.key
                if key == "is":
                    roles.update(dict.fromkeys(subject_name(p) for p in fact.subject))
                if key == "runs" and self.settings.code.all_eligible:
                    named = {subject_name(p) for p in fact.subject}
                    roles.update(dict.fromkeys(c for c in CENTRES if c in named))
                if fact.verb is not None:
                    for subject in fact.subject:
                        men |= read_men(subject)
                if key == "join":  # the run brings him
                    roles[CARRIER] = None
                head = fact.value.head if isinstance(fact.value, Linked) else None
                if key == "key" and isinstance(head, Phrase):
                    keys[subject_name(head)] = None
                if key == "spot" and isinstance(head, Phrase):
                    name = subject_name(head)
                    if f"spot {name}" in told:  # no spot: a role of that name does something
                        roles[f"spot {name}"] = None
                    else:
                        spots[name] = None
        facts = [fact for block in blocks for fact in block.facts]
        letters = letters_in(facts, self.letters, (*roles, *spots, *keys))
        subjects = (p for f in facts if f.verb and f.key != "is" for p in f.subject)
        called = (letter for p in subjects if (letter := letters.called(p)))
        men |= {x: ByLetter(x) for x in called if x not in letters.same_as}
        by_place = {name: choice for name, choice in men.items() if name not in roles}
        spoken_to = {n for n, choice in by_place.items() if not isinstance(choice, ByLetter)}
        spoken_to -= _who_do(facts)
        for name in spoken_to:
            del by_place[name]
        mentioned = dict.fromkeys(x for fact in facts for x in letters.mentioned(fact))
        # The quarterback gets no ball of his own: `alert Q` is no man to look at.
        pointed = tuple(x for x in mentioned if x not in by_place and x[0] != "Q")
        return Scope(
            self.receivers,
            self.routes,
            (*roles, *by_place, *pointed),
            tuple(spots),
            self._named_protections(),
            self.settings.code.all_eligible,
            by_place,
            spoken_to=spoken_to,
            positions=self.positions,
            keys=tuple(keys),
            looks=tuple(self.blocks.names("look")),
            formations=tuple(self.blocks.names("formation")),
            letters=letters,
            others_run=any(
                f.key == "runs" and p.text.casefold().startswith(EVERYONE_ELSE)
                for f in facts
                for p in f.subject
            ),
            pointed=pointed,
            runners=runners_of(facts, self.routes, letters),
            concept=blocks[-1].name.text if blocks and blocks[-1].kind == "concept" else "",
            run=any(block.kind == Kind.RUN.value for block in blocks),
        )

    def lineage(self, block: Block) -> list[Block]:
        """The blocks that it extends, the furthest first, and itself."""
        return [*reversed(self.blocks.ancestors(block)), block]

    def joined(self, body: Body, owner: Body, concepts: Mapping[str, Concept]) -> Body:
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

    def runs_broken(self, body: Body) -> bool:
        """Whether a role runs a route of this playbook that could not be read."""
        jobs = (said.value for told in body.jobs.values() for said in told)
        return any(isinstance(j, RouteJob) and j.route.name in self.broken_routes for j in jobs)

    def _named_protections(self) -> tuple[str, ...]:
        """What a concept may protect with, as the coach spells it; his own come first."""
        own = tuple(self.blocks.names("protection"))
        known = {name.casefold() for name in own}
        return (*own, *(name for name in PROTECTIONS if name not in known))


def _who_do(facts: Iterable[Fact]) -> set[str]:
    """The men by place of whom a line says more than a word to them."""
    subjects = (p for f in facts if f.verb and f.key not in ("is", "says") for p in f.subject)
    return {name for subject in subjects for name in read_men(subject)}


def _family(fact: Fact) -> str:
    return string_of(fact.value, fact.span)


def _file_title(block: Block) -> str:
    """The family of a concept that names none: its file's name, as a title."""
    stem = block.span.source.replace("\\", "/").rsplit("/", 1)[-1].rsplit(".", 1)[0]
    return stem.replace("-", " ").replace("_", " ").title()

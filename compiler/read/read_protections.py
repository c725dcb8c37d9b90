"""Protection blocks: the way of the slide, the rules of the line, who helps, what is hot."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from functools import partial
from types import MappingProxyType

from stemline.diagnostics.catalogue.football import E442, E450, E462
from stemline.diagnostics.catalogue.protections import E690, E692, E693, E694
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.blocking.block_names import DEFENDERS
from stemline.football.blocking.protecting import ProtectionRule
from stemline.football.conditions import always
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import Route
from stemline.playbook.concepts import RouteJob
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.playbook import Settings
from stemline.playbook.protection_definitions import (
    HotDef,
    Protection,
    SlideWay,
    Toward,
)
from stemline.playbook.role_rules import ByLetter, Nobody, RoleRule
from stemline.playbook.run_definitions import WHOLE_LINE, LineSpot
from stemline.playbook.said import Said
from stemline.read.name_table import Blocks
from stemline.read.own_letters import letters_in
from stemline.read.pass_blocks import FOR_HELP, FOR_LINE, read_block, way_out
from stemline.read.read_guards import clashes, read_guard
from stemline.read.read_notes import LINEMEN
from stemline.read.read_places import SIDES
from stemline.read.read_roles import read_men, read_rule
from stemline.read.read_routes import read_run
from stemline.read.read_runs import PLACES, read_line_spot
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import Atom, Block, Fact, Linked, Mark, Phrase, Value, items

WAYS = {way.value: way for way in SlideWay}
TOWARD: Mapping[str, Toward] = {
    **{word: side for word, side in SIDES.items() if word not in ("playside", "backside")},
    **WAYS,
}
"""A slide makes the playside, so it cannot be said by it."""

_SAID = {rule: rule.value.capitalize() for rule in ProtectionRule}


def read_protection(
    block: Block,
    blocks: Blocks,
    settings: Settings,
    letters: Mapping[str, str],
    routes: Mapping[str, Route] = LIBRARY,
) -> tuple[Protection, tuple[Diagnostic, ...]]:
    """The protection of a block, with what is wrong in it; ``letters`` are the men's."""
    facts = blocks.facts(block)
    whole = not blocks.is_broken(block)
    beside = len(settings.code.line) // 2
    return read_facts(
        block,
        facts,
        settings.code.receivers,
        whole=whole,
        letters=letters,
        beside=beside,
        routes=routes,
    )


def read_facts(
    block: Block,
    facts: Sequence[Fact],
    receivers: int,
    *,
    whole: bool = True,
    letters: Mapping[str, str] = MappingProxyType({}),
    beside: int = 2,
    routes: Mapping[str, Route] = LIBRARY,
) -> tuple[Protection, tuple[Diagnostic, ...]]:
    """A block's own facts and what it extends, read; ``whole`` if the parser read every line,
    ``beside`` how many linemen the code has on each side of the centre."""
    reading = _ProtectionLines(receivers, facts, letters, routes)
    for fact in facts:
        try:
            reading.read(fact)
        except Misread as miss:
            reading.found.append(miss.diagnostic)
    found = reading.found + reading.clashes()
    whole = whole and not found
    made = reading.protection(block.name.text, block.name.span)
    if whole:
        found += _gaps(made, beside)
    broken = not whole or any(d.is_error for d in found)
    return replace(made, broken=broken), tuple(found)


class _ProtectionLines:
    """Collects what the lines of one block say."""

    def __init__(
        self,
        receivers: int,
        facts: Sequence[Fact],
        letters: Mapping[str, str],
        routes: Mapping[str, Route],
    ) -> None:
        self.receivers = receivers
        self.routes = routes
        self.found: list[Diagnostic] = []
        self.roles = tuple(
            dict.fromkeys(p.text.casefold() for f in facts if f.key == "is" for p in f.subject)
        )
        self.letters = letters_in(facts, letters, self.roles)
        self.toward: list[Said[tuple[Toward, ...]]] = []
        self.line: dict[LineSpot, list[Said[PassBlock]]] = defaultdict(list)
        self.rules: dict[str, list[Said[RoleRule]]] = defaultdict(list)
        self.jobs: dict[str, list[Said[PassBlock]]] = defaultdict(list)
        self.outs: dict[str, list[Said[RouteJob]]] = defaultdict(list)
        self.role_says: dict[str, list[str]] = defaultdict(list)
        self.line_says: dict[LineSpot, list[str]] = defaultdict(list)
        self.point = ""
        self.hot: list[HotDef] = []
        self.says: list[str] = []
        self.cautions: list[str] = []
        self.told: dict[ProtectionRule, list[str]] = {}
        self._by_place(facts)

    def _by_place(self, facts: Sequence[Fact]) -> None:
        """Helpers without a name: `back blocks edge` is for whoever is the back, if one is."""
        for fact in facts:
            for subject in fact.subject if fact.key == "blocks" else ():
                if subject.text.casefold() in self.roles or _is_of_line(subject, self.roles):
                    continue
                letter = self.letters.called(subject)
                if letter in self.letters.same_as or letter in self.roles:
                    continue
                men = {letter: ByLetter(letter)} if letter else read_men(subject)
                for name, choice in men.items():
                    rule = RoleRule((choice, Nobody()), (name, "nobody"))
                    if letter:  # one man, who lines up or is missed
                        rule = RoleRule((choice,), (name,))
                    self.rules[name].append(Said(rule, always(self.receivers), fact.span))
                    self.roles = (*self.roles, name)

    def read(self, fact: Fact) -> None:
        guard = read_guard(fact.guard, self.receivers, looks=False)
        match fact.key:
            case "toward":
                self.toward.append(Said(read_toward(fact.value, fact.span), guard, fact.span))
            case "point":
                words = Words([one_phrase(fact.value, "a defender", fact.span)])
                self.point = words.expect(DEFENDERS, E462)
                words.finish("a defender")
            case "hot":
                self.hot.append(self._hot(fact))
            case "say":
                self.says.append(string_of(fact.value, fact.span))
            case "caution":
                self.cautions.append(string_of(fact.value, fact.span))
            case "is":
                rule = read_rule(fact.value, fact.span, self.roles, self.letters)
                for subject in fact.subject:
                    self.rules[subject.text.casefold()].append(Said(rule, guard, fact.span))
            case "blocks":
                for subject in fact.subject:
                    self._blocks(fact, subject, guard.text, Said(None, guard, fact.span))
            case "says":
                for subject in fact.subject:
                    linemen = subject.text.casefold() == LINEMEN
                    spot = WHOLE_LINE if linemen else read_line_spot(subject, self.roles)
                    said = (
                        self.role_says[self._by_letter(subject) or _role(subject, self.roles)]
                        if spot is None
                        else self.line_says[spot]
                    )
                    said.append(string_of(fact.value, fact.span))

    def _blocks(self, fact: Fact, subject: Phrase, guard: str, said: Said[None]) -> None:
        letter = self._by_letter(subject)
        who = letter or read_subject(subject, self.roles)
        job = read_block(fact.value, fact.span, FOR_HELP if isinstance(who, str) else FOR_LINE)
        if isinstance(who, str):
            self.jobs[who].append(Said(job, said.guard, said.span))
            if job.rule.checks and (goes := way_out(fact.value)) is not None:
                route = read_run(goes, fact.span, self.routes, ())
                self.outs[who].append(Said(route, said.guard, said.span))
        else:
            self.line[who].append(Said(job, said.guard, said.span))
        if not guard:
            named = letter or subject.text.casefold().removeprefix("the ")
            self.told.setdefault(job.rule, []).append(named)

    def _by_letter(self, subject: Phrase) -> str:
        """The role of a man who is called by his letter; "" for any other subject."""
        letter = self.letters.called(subject)
        letter = self.letters.same_as.get(letter, letter)
        return letter if letter in self.roles else ""

    def _hot(self, fact: Fact) -> HotDef:
        value = fact.value
        head = value.head if isinstance(value, Linked) else value
        given = value.link("if") if isinstance(value, Linked) else None
        throws = string_of(head, fact.span)
        hot = HotDef(throws, "" if given is None else string_of(given, given.span), fact.span)
        atoms = head.atoms if isinstance(head, Phrase) else ()
        for n in range(len(atoms), 0, -1):
            made = self._hot_man(hot, Phrase(atoms[:n]), atoms[n:])
            if made is not None:
                return made
        self._near_route(atoms)
        return hot

    def _near_route(self, atoms: Sequence[Atom]) -> None:
        """Refuses a route that is misspelt behind a man: kept as words it would be nobody's."""
        for n in range(len(atoms) - 1, 0, -1):
            who, word = Phrase(tuple(atoms[:n])), Phrase(tuple(atoms[n:])).text
            known = self.letters.called(who) or read_men(who)
            if known or who.text.casefold() in ("nearest", "the nearest"):
                if nearest(word, self.routes):
                    raise Words([Phrase(tuple(atoms[n:]))]).miss(E442, self.routes)
                return

    def _hot_man(self, hot: HotDef, who: Phrase, route: Sequence[Atom]) -> HotDef | None:
        """The hot of a man who is named by where he stands, by his letter or by a role of the
        concept, with the route he runs then, if any; None where the words say no such thing."""
        guard = always(self.receivers)
        job: Said[RouteJob] | None = None
        if route:
            phrase = Phrase(tuple(route))
            try:
                run = read_run(phrase, hot.span, self.routes, ())
            except Misread:
                return None
            job = Said(run, guard, hot.span)
        letter = self.letters.called(who)
        men = {letter: ByLetter(letter)} if letter else read_men(who)
        if len(men) > 1 or not (men or job):
            return None
        rules = [RoleRule((choice, Nobody()), (name, "nobody")) for name, choice in men.items()]
        rule = Said(rules[0], guard, hot.span) if rules else None
        return replace(hot, man=who.text, rule=rule, job=job)

    def clashes(self) -> list[Diagnostic]:
        groups: list[tuple[str, Sequence[Said[object]]]] = [("which way it slides", self.toward)]
        groups += [(f"who {role} is", said) for role, said in self.rules.items()]
        groups += [(f"what {role} blocks", said) for role, said in self.jobs.items()]
        groups += [(f"what the {man} blocks", said) for man, said in self.line.items()]
        return [d for what, said in groups for d in clashes(said, self.receivers, what)]

    def protection(self, name: str, span: Span) -> Protection:
        return Protection(
            name=name,
            says=tuple(self.says),
            span=span,
            broken=False,
            words=self._words(),
            toward=tuple(self.toward),
            line={man: tuple(said) for man, said in self.line.items()},
            rules={role: tuple(said) for role, said in self.rules.items()},
            jobs={role: tuple(said) for role, said in self.jobs.items()},
            outs={role: tuple(said) for role, said in self.outs.items()},
            role_says={role: tuple(said) for role, said in self.role_says.items()},
            line_says={man: tuple(said) for man, said in self.line_says.items()},
            point=self.point,
            hot=tuple(self.hot),
            cautions=tuple(self.cautions),
        )

    def _words(self) -> str:
        """The whole protection in a line: "Slide: centre, playside guard. Scan: helper (back)." """
        parts = (
            f"{_SAID[rule]}: {', '.join(self._who(m) for m in men)}."
            for rule, men in self.told.items()
        )
        return " ".join(parts)

    def _who(self, subject: str) -> str:
        said = self.rules.get(subject)
        if said and said[0].value.words[0] == subject:
            return subject
        return f"{subject} ({' or '.join(said[0].value.words)})" if said else subject


def _gaps(made: Protection, beside: int) -> list[Diagnostic]:
    """Somebody without a job, or men of the line of whom nothing is said."""
    found = [
        E693(role=role).at(said[0].span)
        for role, said in made.rules.items()
        if role not in made.jobs and any(not _nobody(s.value) for s in said)
    ]
    if WHOLE_LINE not in made.line:
        told = {(spot.side, spot.place) for spot in made.line}
        missing = [] if (None, "centre") in told else ["the centre"]
        for place in ("guard", "tackle")[:beside]:
            sides = {side for side, at in told if at == place}
            if not any(side is not None and side.opposite in sides for side in sides):
                missing.append(f"a {place}" if sides else f"the {place}s")
        if missing:
            found.append(E694(name=made.name, men=" and ".join(missing)).at(made.span))
    return found


def _nobody(rule: RoleRule) -> bool:
    return all(isinstance(choice, Nobody) for choice in rule.choices)


def read_toward(value: Value | None, span: Span) -> tuple[Toward, ...]:
    """``weak`` · ``away from back or call``: sides in order, for when the first is not there."""
    ways = []
    for item in items(value, Mark.OR):
        words = Words([one_phrase(item, "a side", span)])
        words.take_word("the")
        ways.append(TOWARD[words.choice(TOWARD, E692)])
    return tuple(ways)


def _is_of_line(subject: Phrase, roles: Collection[str]) -> bool:
    try:
        return read_line_spot(subject, roles) is not None
    except Misread:
        return True


def read_subject(phrase: Phrase, roles: Collection[str]) -> LineSpot | str:
    """``playside tackle`` or a role."""
    name = phrase.text.casefold().removeprefix("the ")
    if name in roles:
        return name
    spot = read_line_spot(phrase, roles)
    if spot is None:
        names = (*roles, "centre", "line", *(f"{s} {p}" for s in SIDES for p in PLACES))
        known = either([*roles, "line", "centre", "playside guard", "backside tackle"])
        raise Words([phrase]).miss(partial(E690, known=known), names)
    return spot


def _role(phrase: Phrase, roles: Collection[str]) -> str:
    if phrase.text.casefold() not in roles:
        raise Words([phrase]).miss(E450, (*roles, "line", "centre", "playside guard"))
    return phrase.text.casefold()

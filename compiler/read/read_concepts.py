"""The facts of a concept or a tag: who plays each role, what he does, where the eyes go."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from stemline.diagnostics.catalogue.football import (
    E403,
    E420,
    E444,
    E447,
    E450,
    E460,
    E461,
    E463,
    E465,
    E469,
    E470,
    E474,
)
from stemline.diagnostics.catalogue.key_cases import E687
from stemline.diagnostics.catalogue.runs import E681
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.offence.quarterback import FEET, MOVING
from stemline.football.offence.strokes import Decide
from stemline.football.scrambling import SCRAMBLES
from stemline.playbook.concepts import (
    LAST,
    AlertDef,
    Body,
    ClaimDef,
    FootDef,
    Job,
    Keep,
    LookAt,
    Need,
    RouteJob,
    SpotRule,
    Swap,
)
from stemline.playbook.exchange_definitions import ExchangeDef
from stemline.playbook.kill_definitions import KillDef
from stemline.playbook.note_definitions import Addressed, Note, Told
from stemline.playbook.role_rules import ByLetter, Choice, Nobody, Passer, RoleRule, Snapper
from stemline.playbook.run_definitions import BlockRules, Join, KeyDef, LineSpot, Reaction, Toward
from stemline.playbook.said import Said, SideWord
from stemline.read.concept_scope import CENTRES, Scope, called_men, read_target
from stemline.read.orders_by_look import order_by_look, side_by_look
from stemline.read.read_claims import claims_clash, read_alert, read_claim, read_need, says_nothing
from stemline.read.read_exchanges import EXCHANGES, ball_clashes, read_exchange
from stemline.read.read_guards import clashes
from stemline.read.read_key_cases import UNREAD, case_clashes, reacts, read_named_reaction
from stemline.read.read_kills import read_kill
from stemline.read.read_notes import read_group
from stemline.read.read_places import SIDES
from stemline.read.read_roles import read_men, read_others, read_rule
from stemline.read.read_routes import in_a_run, read_block_then_run, read_decide, read_run
from stemline.read.read_runs import (
    REACTIONS,
    read_aim,
    read_block,
    read_join,
    read_key,
    read_line_spot,
    read_reaction,
    read_rules,
    read_toward,
)
from stemline.read.read_spots import read_spot
from stemline.read.words import Misread, Missed, Words, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import Fact, Linked, Mark, Phrase, Value, items, phrases

K = TypeVar("K")
T = TypeVar("T")

_BY_PLACE = (
    *(f"{side} #{rank}" for side in ("strong", "weak") for rank in range(1, 5)),
    "back", "fullback", "tight end",
)  # fmt: skip
"""Men by where they stand, whom any line may name: what a misspelt subject may have meant."""
_LOOKED_AT = ("read", "pressure", "alert")
"""Lines that may count a man from another side than the line of his job."""
PICKS = ("soft corner", "leverage", "fewer defenders", "field", "boundary", "best matchup")
KEEPS = {keep.value: keep for keep in Keep}


def read_body(
    facts: Sequence[Fact], scope: Scope
) -> tuple[Body, tuple[tuple[Keep, Span], ...], list[Diagnostic]]:
    """Every line read; a line that cannot be is a diagnostic and the others stand."""
    reading = _ConceptLines(scope)
    for fact in facts:
        try:
            reading.read(fact)
        except Misread as miss:
            reading.found.append(miss.diagnostic)
    return reading.body(), tuple(reading.keeps), reading.found


def subject_name(phrase: Phrase) -> str:
    return phrase.text.casefold()


class _ConceptLines:
    """Collects what the lines of one block say."""

    def __init__(self, scope: Scope) -> None:
        self.scope = scope
        self.found: list[Diagnostic] = []
        self.rules: dict[str, list[Said[RoleRule]]] = defaultdict(list)
        self.jobs: dict[str, list[Said[Job]]] = defaultdict(list)
        self.decides: dict[str, list[Said[Decide]]] = defaultdict(list)
        self.spots: dict[str, list[Said[SpotRule]]] = defaultdict(list)
        self.role_says: dict[str, list[str]] = defaultdict(list)
        self.feet: list[Said[tuple[FootDef, ...]]] = []
        self.orders: dict[str, list[Said[tuple[LookAt, ...]]]] = {"read": [], "pressure": []}
        self.protect: list[Said[str]] = []
        self.pick: list[Said[str]] = []
        self.claims: list[ClaimDef] = []
        self.no_claims: Span | None = None
        self.needs: list[Need] = []
        self.alerts: list[AlertDef] = []
        self.kills: list[KillDef] = []
        self.says: list[str] = []
        self.notes: list[Note] = []
        self.idea: Fact | None = None
        self.cautions: list[str] = []
        self.swaps: list[Swap] = []
        self.line: dict[LineSpot, list[Said[BlockRules]]] = defaultdict(list)
        self.toward: list[Said[Toward]] = []
        self.handoffs: list[Said[tuple[str, ...]]] = []
        self.others: dict[str, list[Said[Job]]] = defaultdict(list)
        self.called: dict[str, Said[Choice]] = {}
        self.pointed: dict[str, list[Said[Choice]]] = defaultdict(list)
        self.scrambles: dict[str, list[Said[str]]] = defaultdict(list)
        self.exchanges: dict[str, list[Said[ExchangeDef]]] = defaultdict(list)
        self.keys: list[KeyDef] = []
        self.reactions: list[Reaction] = []
        self.joins: list[Join] = []
        self.keeps: list[tuple[Keep, Span]] = []

    def read(self, fact: Fact) -> None:
        self._read(fact)
        for letter in dict.fromkeys(self.scope.letters.mentioned(fact)):
            guard = self.scope.guard(fact)
            self.pointed[letter].append(Said(ByLetter(letter), guard, fact.span))
        for phrase in phrases(fact.value) if fact.key in _LOOKED_AT else ():
            for name, man in called_men(phrase, self.scope).items():
                self.pointed[name].append(Said(man, self.scope.guard(fact, looks=False), fact.span))

    def _read(self, fact: Fact) -> None:
        if fact.verb is not None:
            for subject in fact.subject:
                self._told(fact, subject)
            return
        readers: dict[str, Callable[[Fact], None]] = {
            "read": self._order,
            "pressure": self._order,
            "feet": self._feet,
            "spot": self._spot,
            "claims": self._claim,
            "pair": self._claim,
            "needs": lambda f: self.needs.append(read_need(f, self.scope)),
            "alert": lambda f: self.alerts.append(read_alert(f, self.scope)),
            "kill": self._kill,
            "protect": lambda f: self._choice(f, self.protect, self.scope.protections, E460),
            "pick": self._pick,
            "say": self._say,
            "idea": self._idea,
            "caution": lambda f: self.cautions.append(string_of(f.value, f.span)),
            "swap": self._swap,
            "keeps": self._keep,
            "family": lambda f: None,
            "toward": self._toward,
            "handoff": self._handoff,
            "key": self._key,
            "join": lambda f: self.joins.append(read_join(f.value, f.span)),
            **dict.fromkeys(REACTIONS, self._reaction),
        }
        readers[fact.key](fact)

    def _idea(self, fact: Fact) -> None:
        if self.idea is not None:
            other = (Related(self.idea.span, "the other line is here"),)
            raise Misread(E420(what="what it is for").at(fact.span, related=other))
        string_of(fact.value, fact.span)
        self.idea = fact

    # Words to men.

    def _say(self, fact: Fact) -> None:
        if fact.guard is None:
            self.says.append(string_of(fact.value, fact.span))
        else:
            self._note(Addressed.ALL, fact)

    def _note(self, who: Told, fact: Fact) -> None:
        guard = self.scope.guard(fact)
        self.notes.append(Note(who, string_of(fact.value, fact.span), guard, fact.span))

    def _role_says(self, role: str, who: Told, fact: Fact) -> None:
        """A word to the man of a role or place, on a condition or for always."""
        if fact.guard is None:
            self.role_says[role].append(string_of(fact.value, fact.span))
        else:
            self._note(who, fact)

    # Roles.

    def _told(self, fact: Fact, subject: Phrase) -> None:
        key = fact.key
        if reacts(fact):
            self.reactions.append(read_named_reaction(fact, subject, self.scope))
            return
        if key in EXCHANGES:
            self._exchange(fact, subject)
            return
        if key != "is" and (who := read_others(subject)):
            self._others(fact, who)
            return
        group = None
        if key != "is" and subject_name(subject) not in self.scope.roles:
            group = read_group(subject, fact, self.scope.positions)
        if group is not None:
            self._note(group, fact)
            return
        letter = self.scope.letters.called(subject) if key != "is" else ""
        if letter in self.scope.letters.same_as:
            self._does(self.scope.letters.same_as[letter], fact, subject)
            return
        men = read_men(subject) if key != "is" and not letter else {}
        if letter:
            men = {letter: ByLetter(letter)}
        if men and men.keys() <= {*self.scope.by_place, *self.scope.spoken_to}:
            if key == "says" and self._only_spoken_to(men):
                for choice in men.values():
                    self._note(choice, fact)
                return
            for name, choice in men.items():
                if name in self.scope.spoken_to:
                    self._note(choice, fact)
                    continue
                self._by_place(name, choice, fact)
                self._does(name, fact, subject)
            return
        self._does(subject_name(subject), fact, subject)

    def _only_spoken_to(self, men: Mapping[str, Choice]) -> bool:
        """Whether a word to men by place gives them no role: in a tag, which would call them out of
        the concept's order, to the quarterback, whose job is not said by a role, and to a letter
        of which nothing else is said."""
        passer = any(isinstance(choice, Passer) for choice in men.values())
        called = self.scope.calls_men and not men.keys() <= set(self.scope.owned)
        return passer or called or men.keys() <= self.scope.letters.idle

    def _by_place(self, name: str, choice: Choice, fact: Fact) -> None:
        """Who he is, said by his name itself: whoever stands there, and nobody where none does."""
        if self.scope.calls_men and name not in self.scope.owned:
            self.called.setdefault(name, Said(choice, self.scope.always, fact.span))
        elif name not in self.rules:
            rule = RoleRule((choice, Nobody()), (name, "nobody"))
            if isinstance(choice, ByLetter):  # one man, who lines up or is missed
                rule = RoleRule((choice,), (name,))
            self.rules[name].append(Said(rule, self.scope.always, fact.span))

    def _run(self, fact: Fact) -> RouteJob:
        scope = self.scope
        return read_run(fact.value, fact.span, scope.routes, scope.roles, scope.runners)

    def _others(self, fact: Fact, who: str) -> None:
        """What all those do whom no other line names."""
        guard = self.scope.guard(fact)
        match fact.key:
            case "runs":
                run = self._run(fact)
                self.others[who].append(Said(run, guard, fact.span))
            case "blocks":
                self.others[who].append(Said(read_block(fact), guard, fact.span))
            case "says":
                self._role_says(who, who, fact)
            case _:
                raise Misread(E403(verb=fact.key).at(fact.span))

    def _does(self, role: str, fact: Fact, subject: Phrase) -> None:
        key = fact.key
        eligible = self.scope.all_eligible and role in CENTRES
        if key == "runs" and eligible and role not in self.rules:
            # Where he may catch a pass he needs no rule: there is only one.
            rule = RoleRule((Snapper(),), (role,))
            self.rules[role].append(Said(rule, self.scope.always, fact.span))
        spot = None if key == "is" else read_line_spot(subject, self.scope.roles)
        if spot is not None:
            self._line(fact, spot)
            return
        if key != "is" and role not in self.scope.roles:
            raise Words([subject]).miss(E450, self.scope.roles, also=_BY_PLACE)
        guard = self.scope.guard(fact, looks=key != "is")
        match key:
            case "is":
                rule = read_rule(fact.value, fact.span, self.scope.roles, self.scope.letters)
                self.rules[role].append(Said(rule, guard, fact.span))
            case "runs":
                run = self._run(fact)
                self.jobs[role].append(Said(run, guard, fact.span))
            case "blocks":
                scope = self.scope
                goes = read_block_then_run(
                    fact.value, fact.span, scope.routes, scope.roles, scope.runners
                )
                if goes is not None and scope.run:
                    raise Misread(in_a_run(fact, goes, subject.text))
                self.jobs[role].append(Said(goes or read_block(fact), guard, fact.span))
            case "aims":
                self.jobs[role].append(Said(read_aim(fact.value, fact.span), guard, fact.span))
            case "decides":
                self.decides[role].append(Said(read_decide(fact), guard, fact.span))
            case "scrambles":
                words = Words([one_phrase(fact.value, "what he does then", fact.span)])
                way = words.expect(SCRAMBLES, E687)
                words.finish("what he does then")
                self.scrambles[role].append(Said(way, guard, fact.span))
            case "says":
                self._role_says(role, role, fact)
            case _:
                raise Misread(E403(verb=key).at(fact.span))

    # The line, and the run.

    def _line(self, fact: Fact, spot: LineSpot) -> None:
        """What a lineman does is told by his place; he may block and be coached, no more."""
        guard = self.scope.guard(fact)
        match fact.key:
            case "blocks":
                rules = read_rules(fact.value, fact.span)
                self.line[spot].append(Said(rules, guard, fact.span))
            case "says":
                if fact.guard is None:
                    self.role_says[str(spot)].append(string_of(fact.value, fact.span))
                # A pass has no rules of the line: there he is found by where he stands.
                self._note(spot, fact)
            case _:
                raise Misread(E403(verb=fact.key).at(fact.span))

    def _toward(self, fact: Fact) -> None:
        guard = self.scope.guard(fact, looks=False)
        toward = read_toward(fact.value, fact.span, self.scope.letters)
        self.toward.append(Said(toward, guard, fact.span))

    def _handoff(self, fact: Fact) -> None:
        """The men between the quarterback and the carrier, in the order in which they have it."""
        guard = self.scope.guard(fact, looks=False)
        roles = []
        for item in items(fact.value, Mark.ORDER):
            words = Words([one_phrase(item, "a role", fact.span)])
            roles.append(words.expect(self.scope.roles, E444))
            words.finish("a role")
        self.handoffs.append(Said(tuple(roles), guard, fact.span))

    def _exchange(self, fact: Fact, subject: Phrase) -> None:
        """Who gives the ball to whom."""
        guard = self.scope.guard(fact, looks=False)
        given, key = read_exchange(fact, subject, self.scope)
        self.exchanges[key].append(Said(given, guard, fact.span))

    def _reaction(self, fact: Fact) -> None:
        self.reactions.append(read_reaction(fact, self.scope.roles))

    # The quarterback.

    def _order(self, fact: Fact) -> None:
        looks = tuple(self._look(item) for item in items(fact.value, Mark.ORDER))
        try:
            guard = self.scope.guard(fact, looks=False)
        except Misread as found:
            told = order_by_look(found.diagnostic, fact.key, looks, self.scope.concept)
            raise Misread(told) from found
        for place, look in enumerate(looks, 1):
            if look.last and (place == 1 or place < len(looks) or fact.key == "pressure"):
                raise Misread(E474(last=" or ".join(look.last)).at(look.span))
        self.orders[fact.key].append(Said(looks, guard, fact.span))

    def _look(self, value: Value) -> LookAt:
        head = value.head if isinstance(value, Linked) else value
        if last := self._last(head):
            if isinstance(value, Linked):
                raise Misread(E474(last=" or ".join(last)).at(value.span))
            return LookAt("", "", "", value.span, last)
        phrase = one_phrase(head, "a spot or a role", value.span)
        target = read_target(phrase, self.scope, also=LAST)
        foot = partner = ""
        if isinstance(value, Linked):
            for link in value.links:
                phrase = one_phrase(link.value, "one word", link.value.span)
                if link.connector.word == "on":
                    foot = Words([phrase]).expect(FEET, E463)
                else:
                    partner = read_target(phrase, self.scope)
        return LookAt(target, foot, partner, value.span)

    def _last(self, value: Value | None) -> tuple[str, ...]:
        """What he does when no look is open: ``run``, ``throw away`` or one or the other; nothing
        for a look, or for a role or spot of that name."""
        words = [
            item.text.casefold() if isinstance(item, Phrase) else ""
            for item in items(value, Mark.OR)
        ]
        said = all(word in LAST and word not in self.scope.targets for word in words)
        return tuple(words) if said else ()

    def _feet(self, fact: Fact) -> None:
        guard = self.scope.guard(fact, looks=False)
        steps = []
        for item in items(fact.value, Mark.AND):
            words = Words([one_phrase(item, "feet parted by commas", fact.span)])
            name = words.expect(FEET, E463)
            side: SideWord | None = None
            if name in MOVING and not words.done:
                side = SIDES[words.expect(SIDES, E447)]
            words.finish("a step")
            steps.append(FootDef(name, side))
        self.feet.append(Said(tuple(steps), guard, fact.span))

    def _spot(self, fact: Fact) -> None:
        value = fact.value
        rule = value.link("is") if isinstance(value, Linked) else None
        if not isinstance(value, Linked) or not isinstance(value.head, Phrase) or rule is None:
            raise Misread(E465().at(fact.span))
        guard = self.scope.guard(fact, looks=False)
        role = f"spot {subject_name(value.head)}"
        if role in self.scope.roles:  # a man called so: he runs or blocks in another line
            who = read_rule(rule, fact.span, self.scope.roles)
            self.rules[role].append(Said(who, guard, fact.span))
            return
        spot = read_spot(rule, self.scope.roles)
        self.spots[subject_name(value.head)].append(Said(spot, guard, fact.span))

    def _claim(self, fact: Fact) -> None:
        if says_nothing(fact):
            if self.claims:
                raise Misread(claims_clash(fact.span, self.claims[0].span))
            self.no_claims = fact.span
            return
        claim = read_claim(fact, self.scope)
        if self.no_claims is not None:
            raise Misread(claims_clash(fact.span, self.no_claims))
        self.claims.append(claim)

    def _key(self, fact: Fact) -> None:
        """One a block, or more with a name each, by which lines say what he does."""
        value = fact.value
        if isinstance(value, Linked) and isinstance(value.head, Phrase):
            made = read_key(value.link("is"), fact.span)
            self.keys.append(replace(made, name=subject_name(value.head)))
            return
        if self.keys:
            first = (Related(self.keys[0].span, "the first is read here"),)
            raise Misread(E681().at(fact.span, related=first))
        self.keys.append(read_key(value, fact.span))

    def _kill(self, fact: Fact) -> None:
        kill = read_kill(fact, self.scope.looks)
        for other in self.kills:
            if other.target == kill.target:
                first = (Related(other.span, "the other line is here"),)
                raise Misread(E420(what="when it is killed to that").at(fact.span, related=first))
        self.kills.append(kill)

    def _choice(
        self, fact: Fact, into: list[Said[str]], names: Collection[str], code: Missed
    ) -> None:
        guard = self.scope.guard(fact, looks=False)
        words = Words([one_phrase(fact.value, "one choice", fact.span)])
        words.take_word("side")
        words.take_word("by")
        into.append(Said(words.choice(names, code), guard, fact.span))

    def _pick(self, fact: Fact) -> None:
        try:
            self._choice(fact, self.pick, PICKS, E461)
        except Misread as found:
            raise Misread(side_by_look(found.diagnostic, self.scope.concept)) from found

    # Tags.

    def _swap(self, fact: Fact) -> None:
        value = fact.value
        other = value.link("with") if isinstance(value, Linked) else None
        if not isinstance(value, Linked) or value.head is None or other is None:
            raise Misread(E469().at(fact.span))
        first, second = (
            Words([one_phrase(v, "a role", fact.span)]).expect(self.scope.roles, E444)
            for v in (value.head, other)
        )
        self.swaps.append(Swap(first, second, fact.span))

    def _keep(self, fact: Fact) -> None:
        for phrase in phrases(fact.value):
            words = Words([phrase])
            self.keeps.append((KEEPS[words.expect(KEEPS, E470)], fact.span))
            words.finish("what a tag keeps")

    def body(self) -> Body:
        """What was collected, with clashes between guards reported."""
        groups: list[tuple[str, Sequence[Said[object]]]] = []
        for title, table in (
            ("who {} is", self.rules),
            ("what {} does", self.jobs),
            ("when {} decides", self.decides),
            ("where spot {} is", self.spots),
            ("how the {} blocks", self.line),
            ("what {} does", self.others),
        ):
            groups += [(title.format(name), said) for name, said in table.items()]
        groups += [("the feet", self.feet), ("the protection", self.protect)]
        groups += [("the pick of sides", self.pick), ("where the run goes", self.toward)]
        groups += [("whose hands the ball goes through", self.handoffs)]
        groups += [(f"the {key} order", said) for key, said in self.orders.items()]
        for what, said in groups:
            self.found += clashes(said, self.scope.receivers, what)
        self._only_in_sets()
        self.found += ball_clashes(self.exchanges, self.handoffs)
        if not any(isinstance(d.said, UNREAD) for d in self.found):
            self.found += case_clashes(self.reactions, self.keys)
        return Body(
            rules=_frozen(self.rules),
            jobs=_frozen(self.jobs),
            decides=_frozen(self.decides),
            spots=_frozen(self.spots),
            role_says=_frozen(self.role_says),
            feet=tuple(self.feet),
            read=tuple(self.orders["read"]),
            pressure=tuple(self.orders["pressure"]),
            protect=tuple(self.protect),
            pick=tuple(self.pick),
            claims=tuple(self.claims),
            no_claims=self.no_claims is not None,
            needs=tuple(self.needs),
            alerts=tuple(self.alerts),
            kills=tuple(self.kills),
            idea=string_of(self.idea.value, self.idea.span) if self.idea is not None else "",
            says=tuple(self.says),
            notes=tuple(self.notes),
            cautions=tuple(self.cautions),
            swaps=tuple(self.swaps),
            line=_frozen(self.line),
            toward=tuple(self.toward),
            handoffs=tuple(self.handoffs),
            others=_frozen(self.others),
            called=self.called,
            pointed={
                letter: tuple(said)
                for letter, said in self.pointed.items()
                if letter not in {*self.rules, *self.called, *self.scope.owned}
            },
            exchanges=_frozen(self.exchanges),
            scrambles=_frozen(self.scrambles),
            keys=tuple(self.keys),
            reactions=tuple(self.reactions),
            joins=tuple(self.joins),
        )

    def _only_in_sets(self) -> None:
        """A letter whose every line asks for a formation is wanted in those alone."""
        for name, said in self.rules.items():
            if not isinstance(self.scope.by_place.get(name), ByLetter):
                continue
            asked = [one.guard.formations for one in self.jobs.get(name, ())]
            if asked and all(asked):
                guard = replace(said[0].guard, formations=frozenset().union(*asked))
                self.rules[name] = [replace(said[0], guard=guard)]


def _frozen(table: Mapping[K, list[T]]) -> dict[K, tuple[T, ...]]:
    return {name: tuple(values) for name, values in table.items()}

"""What the lines of one concept or tag may name."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from itertools import pairwise

from stemline.diagnostics.catalogue.football import E464
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.conditions import Guard, always
from stemline.football.offence.strokes import Route
from stemline.football.players import Position
from stemline.playbook.concepts import REST
from stemline.playbook.role_rules import Choice, Ranked
from stemline.read.own_letters import NO_LETTERS, Letters
from stemline.read.read_guards import read_guard
from stemline.read.read_places import SIDES
from stemline.read.words import Words
from stemline.syntax.tree import AtomKind, Fact, Phrase

_BY_CALL = ("call", "away", "field", "boundary")
CENTRES = ("centre", "center")
"""The role of a centre who goes out, where no line gives him one of another name."""


@dataclass(frozen=True)
class Scope:
    """What a concept's lines may name, and how many men are counted; ``all_eligible`` where the
    centre may catch a pass too."""

    receivers: int
    routes: Mapping[str, Route]
    roles: Collection[str]
    spots: Collection[str]
    protections: Collection[str] = tuple(PROTECTIONS)
    all_eligible: bool = False
    by_place: Mapping[str, Choice] = field(default_factory=dict)
    """Of the roles those that no line gives with `is`: their name says who they are."""
    spoken_to: Collection[str] = ()
    """The men by place to whom lines say a word and nothing else: another line has them already."""
    calls_men: bool = False
    """Whether it is a tag: a man whom it names by his place is taken out of the concept's order,
    unless the concept names him so itself (``owned``)."""
    owned: Collection[str] = ()
    positions: Collection[Position] = ()
    """Those that men of the playbook have."""
    keys: Collection[str] = ()
    """The names of the men who are read."""
    looks: Collection[str] = ()
    """The names of the playbook's looks."""
    formations: Collection[str] = ()
    """The names of its formations."""
    letters: Letters = NO_LETTERS
    """The men whom its lines may call by their letters."""
    others_run: bool = False
    """Whether a line says what route `everyone else` runs: any man who is counted may be read."""
    pointed: Collection[str] = ()
    """Of the roles those letters of which no line says what their men do."""
    runners: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """By a route the roles that run it."""
    concept: str = ""
    """The name of the concept whose lines they are; none for a tag's and a run's."""
    run: bool = False
    """Whether they are a run's, or a tag's for one."""

    def guard(self, fact: Fact, *, looks: bool = True) -> Guard:
        """When a line holds; ``looks`` False refuses words of the defence."""
        return read_guard(fact.guard, self.receivers, self.formations, looks=looks)

    @property
    def always(self) -> Guard:
        return always(self.receivers)

    @property
    def targets(self) -> tuple[str, ...]:
        return (*self.roles, *self.spots)


def read_target(phrase: Phrase, scope: Scope, also: Collection[str] = ()) -> str:
    """The spot or role that is looked at, thrown to or claimed; in a tag also `REST`. A route that
    one man runs is that man.

    Of a route that both sides run, as `each #1` does, it is the strong one's.

    ``also`` are other right words for this place, which a misspelt one may have meant.
    """
    words = Words([phrase])
    if scope.calls_men and words.take_word(REST) and words.done:
        return REST
    words.at = 0
    names = (*scope.targets, REST) if scope.calls_men else scope.targets
    target = words.take_name((*scope.targets, *called_men(phrase, scope)))
    if target is None and (route := words.take_name(scope.runners)):
        ran = [role for role in scope.runners[route] if role in scope.roles]
        if len(ran) == 2 and _mirrored(ran):
            ran = ran[:1]
        if len(ran) == 1 and words.done:
            return ran[0]
        words.at = 0
        raise words.miss(E464, ran or names, also=also)
    if target is None:
        raise words.miss(E464, names, also=also)
    words.finish("a spot or a role")
    return target


def called_men(phrase: Phrase, scope: Scope) -> dict[str, Ranked]:
    """The man whom a phrase counts and no line of his own names so, by its words: ``call #1`` where
    `each #1` has a job, ``weak #2`` where `everyone else` runs."""
    found = {}
    for side, rank in pairwise(phrase.atoms):
        if side.word in SIDES and rank.kind is AtomKind.RANK:
            name, number = f"{side.word} {rank.text}", rank.text
            both = {f"strong {number}", f"weak {number}"} <= {*scope.roles}
            counted = scope.others_run or (side.word in _BY_CALL and both)
            if name not in scope.roles and counted:
                found[name] = Ranked(SIDES[side.word], int(number.removeprefix("#")))
    return found


def _mirrored(men: list[str]) -> bool:
    """Whether two men by place are the strong one and the weak one of a number."""
    first, second = (man.partition(" ") for man in men)
    return (first[0], second[0]) == ("strong", "weak") and first[2] == second[2]

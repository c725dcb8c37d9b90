"""Who runs which route in a body, so that a read may name the man by it: ``read flat > hook``."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from stemline.read.own_letters import Letters
from stemline.read.read_roles import read_men
from stemline.read.read_routes import ALSO_CALLED
from stemline.read.words import Words
from stemline.syntax.tree import Fact, phrases


def runners_of(
    facts: Iterable[Fact], routes: Collection[str], letters: Letters
) -> Mapping[str, tuple[str, ...]]:
    """By a route, as a line has it, the roles that run it on any condition; whoever is only one of
    all others is none of them. ``letters`` are the men whom a line may call by theirs."""
    found: dict[str, dict[str, None]] = {}
    known = (*routes, *ALSO_CALLED)
    for fact in facts:
        first = next(phrases(fact.value), None) if fact.key == "runs" else None
        name = Words([first]).take_name(known) if first is not None else None
        for subject in fact.subject if name else ():
            if subject.atoms[0].word not in ("everyone", "every"):
                letter = letters.called(subject)
                named = letters.same_as.get(letter, letter) or subject.text.casefold()
                roles = read_men(subject) or (named,)
                found.setdefault(name or "", {}).update(dict.fromkeys(roles))
    return {route: tuple(roles) for route, roles in found.items()}

"""What the quarterback does off keys that have a name: ``gives if end stays``.

The cases are all that the keys may do: what some line says of each and, where only one thing is
said of him, that he does not do it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from stemline.diagnostics.catalogue.exchange_lines import E780
from stemline.diagnostics.catalogue.key_cases import E682, E683, E684, E685, E686, W682
from stemline.diagnostics.catalogue.runs import E675
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.playbook.exchange_definitions import QUARTERBACK
from stemline.playbook.run_definitions import KeyDef, Reaction
from stemline.read.concept_scope import Scope
from stemline.read.words import Misread, Words, one_phrase
from stemline.syntax.tree import Fact, Linked, Mark, Phrase, Value, items

ACTIONS = (
    "stays", "widens", "squeezes", "chases", "comes up", "drops", "fits", "takes quarterback",
    "takes pitch", "takes back",
)  # fmt: skip
"""What a man who is read may do: common practice, no published source."""
UNREAD = (E682, E683, E686)
"""Lines that could not be read: no case is looked for where one is missing."""
_DOES = {"gives": "give", "keeps": "keep", "throws": "throw", "pitches": "pitch"}
"""Verbs of the quarterback, and what a key's choice is called."""
_SAID = {does: verb for verb, does in _DOES.items()} | {"pull": "keeps"}


def reacts(fact: Fact) -> bool:
    """Whether a line says what is done off a key, and not how the ball always goes."""
    if fact.key in ("gives", "keeps"):
        return True
    value = fact.value
    return fact.key in _DOES and isinstance(value, Linked) and value.link("if") is not None


def read_named_reaction(fact: Fact, subject: Phrase, scope: Scope) -> Reaction:
    """``quarterback throws to bubble if end chases, apex comes up``."""
    if subject.text.casefold() != QUARTERBACK:
        raise Misread(E686(does=fact.key).at(subject.span))
    value, does = fact.value, _DOES[fact.key]
    when = value.link("if") if isinstance(value, Linked) else None
    if not isinstance(value, Linked) or when is None:
        raise Misread(E675(does=f"quarterback {fact.key}").at(fact.span))
    to = ""
    if does in ("throw", "pitch"):
        target = value.link("to")
        if target is None:
            line = f"quarterback {fact.key} to bubble if end chases"
            raise Misread(E780(does=f"quarterback {fact.key}", line=line).at(fact.span))
        to = one_phrase(target, "a role", fact.span).text.casefold()
        if to not in scope.roles:
            to = Words([one_phrase(target, "a role", fact.span)]).expect(scope.roles, E682)
    cases = tuple(_case(item, scope) for item in items(when, Mark.AND))
    said = ", ".join(" ".join(case) for case in cases)
    return Reaction(does, to, said, None, fact.span, cases)


def _case(value: Value, scope: Scope) -> tuple[str, str]:
    """A key by its name, and what he does."""
    words = Words([one_phrase(value, "a key and what he does", value.span)])
    name = words.expect(scope.keys, E682)
    takes = words.take_word("takes")
    if takes:
        words.take_word("the")
        action = f"takes {words.expect(('quarterback', 'pitch', 'back'), E683)}"
    else:
        action = words.expect(ACTIONS, E683)
    words.finish("what a key does")
    return name, action


def case_clashes(reactions: Sequence[Reaction], keys: Sequence[KeyDef]) -> Iterator[Diagnostic]:
    """Lines that do not say which key, cases said twice, and the first case that nobody says."""
    named = [key.name for key in keys if key.name]
    vague = next((one for one in reactions if not one.cases and one.off is None), None)
    if len(named) > 1 and vague is not None:
        does = vague.when.casefold().removeprefix("he ")
        does = next((action for action in ACTIONS if does.startswith(action)), ACTIONS[0])
        to = f" to {vague.to}" if vague.to else ""
        line = f"quarterback {_SAID[vague.does]}{to} if {named[0]} {does}"
        yield E684(does=vague.does, line=line).at(vague.span)
    told = [one for one in reactions if one.cases]
    if not told or any(not one.cases and one.off is None for one in reactions):
        return
    clash = next(_twice(told), None)
    if clash is not None:
        yield clash
        return
    for case in _worlds(told):
        if not any(_holds(one, case) for one in told):
            given = ", ".join(
                f"{name} {'stays' if action.startswith('not ') else action}"
                for name, action in case.items()
            )
            line = f"quarterback keeps if {given}"
            yield W682(case=_spoken(case), line=line).at(told[-1].span)
            return


def _worlds(told: Sequence[Reaction]) -> Iterator[dict[str, str]]:
    """Every case: what the lines say of each key, or that he does not do the one thing said."""
    does: dict[str, dict[str, None]] = {}
    for one in told:
        for name, action in one.cases:
            does.setdefault(name, {})[action] = None
    choices = [(*said, "") if len(said) == 1 else tuple(said) for said in does.values()]
    for made in product(*choices):
        yield {
            name: action or f"not {next(iter(does[name]))}"
            for name, action in zip(does, made, strict=True)
        }


def _holds(one: Reaction, case: dict[str, str]) -> bool:
    return all(case.get(name) == action for name, action in one.cases)


def _twice(told: Sequence[Reaction]) -> Iterator[Diagnostic]:
    """Two lines for one case of which neither is narrower, with different ends."""
    for case in _worlds(told):
        holding = [one for one in told if _holds(one, case)]
        for n, one in enumerate(holding):
            for other in holding[n + 1 :]:
                mine, theirs = set(one.cases), set(other.cases)
                if (one.does, one.to) != (other.does, other.to) and not (
                    mine < theirs or theirs < mine
                ):
                    yield E685(
                        case=_spoken(case), first=_SAID[one.does], second=_SAID[other.does]
                    ).at(other.span)


def _spoken(case: dict[str, str]) -> str:
    """ "end chases and apex does not come up"."""
    return " and ".join(
        f"{name} {_denied(action.removeprefix('not '))}" if action.startswith("not ")
        else f"{name} {action}"
        for name, action in case.items()
    )  # fmt: skip


def _denied(action: str) -> str:
    first, _, rest = action.partition(" ")
    stem = first[:-2] if first.endswith("zes") else first[:-1]
    stem = {"squeezes": "squeeze", "chases": "chase"}.get(first, stem)
    return f"does not {stem}{f' {rest}' if rest else ''}"

"""What a concept claims of a defence and needs of its men: claims, needs and alerts."""

from __future__ import annotations

from stemline.diagnostics.catalogue.football import E401, E420, E430, E444, E464, E466, E467, E468
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.playbook.concepts import AlertDef, ClaimDef, Need
from stemline.read.concept_scope import Scope, read_target
from stemline.read.read_places import LANDMARKS
from stemline.read.read_routes import read_on
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Fact, Linked, Mark, Phrase, Value, items, phrases

CLAIMS = ("triangle", "high-low", "stretch")


def says_nothing(fact: Fact) -> bool:
    """Whether it drops the claims of what the block extends or is a tag of."""
    value = fact.value
    head = value.head if isinstance(value, Linked) else value
    words = Words(_listed(head, fact))
    if fact.key != "claims" or not words.take_word("nothing") or not words.done:
        return False
    if fact.guard is not None:
        text = " ".join(p.text for p in phrases(fact.guard))
        what = "`claims nothing`"
        raise Misread(E401(found=f"when {text}", what=what).at(fact.guard.span))
    return True


def read_claim(fact: Fact, scope: Scope) -> ClaimDef:
    """A shape with its spots, and the defender who is caught in it."""
    value = fact.value
    head = value.head if isinstance(value, Linked) else value
    guard = scope.guard(fact, looks=False)
    words = Words(_listed(head, fact))
    kind = "high-low" if fact.key == "pair" else words.expect(CLAIMS, E466)
    targets = []
    while not words.done:
        at = words.here
        targets.append((words.expect(scope.targets, E464), at))
    above = value.link("above") if isinstance(value, Linked) else None
    if above is not None:
        targets.append((read_target(one_phrase(above, "a spot", above.span), scope), above.span))
    wanted = {"triangle": 3, "high-low": 2}.get(kind)
    if len(targets) < 2 or (wanted is not None and len(targets) != wanted):
        count = wanted or "two or more"
        raise Misread(E467(kind=kind, wanted=count, got=len(targets)).at(fact.span))
    return ClaimDef(kind, tuple(targets), read_on(value), guard, fact.span)


def _listed(head: Value | None, fact: Fact) -> list[Phrase]:
    """The shape and what makes it, with commas between the names or without."""
    what = "a shape and its spots"
    return [one_phrase(item, what, fact.span) for item in items(head, Mark.AND)] or [
        one_phrase(head, what, fact.span)
    ]


def claims_clash(second: Span, first: Span) -> Diagnostic:
    other = (Related(first, "the other line is here"),)
    return E420(what="what it claims").at(second, related=other)


def read_need(fact: Fact, scope: Scope) -> Need:
    """``needs flat within 3 of numbers``."""
    value = fact.value
    within = value.link("within") if isinstance(value, Linked) else None
    of = value.link("of") if isinstance(value, Linked) else None
    if not isinstance(value, Linked) or within is None or of is None or value.head is None:
        raise Misread(E468().at(fact.span))
    words = Words([one_phrase(value.head, "a role", fact.span)])
    role = words.expect(scope.roles, E444)
    words.finish("a role")
    yards = Words([one_phrase(within, "yards", within.span)]).take_number()
    if yards is None:
        raise Misread(E468().at(within.span))
    landmark = Words([one_phrase(of, "a landmark", of.span)]).expect(LANDMARKS, E430)
    return Need(role, yards, LANDMARKS[landmark], fact.span)


def read_alert(fact: Fact, scope: Scope) -> AlertDef:
    value = fact.value
    head = value.head if isinstance(value, Linked) else value
    target = read_target(one_phrase(head, "a spot or a role", fact.span), scope)
    guard = scope.guard(fact)
    return AlertDef(target, guard, read_on(value), fact.span)

"""What a call is made of: the definitions it names, what these name, and the settings."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cached_property

from stemline.compare.definitions import Definition, DefinitionKey
from stemline.football.play import Kind
from stemline.resolve.order import Order
from stemline.session import Session

_PLACES = ("concept", "run")
_WORD = re.compile(r"[^\s\",>+]+")


class Reach:
    """The definitions behind each call of a playbook.

    A name in a line counts as a use of whatever is called so: too many rather than too few, since
    a play that is made for nothing comes out the same.
    """

    def __init__(self, session: Session, defs: Mapping[DefinitionKey, Definition]) -> None:
        self._session = session
        self._defs = defs
        self._closed: dict[DefinitionKey, frozenset[DefinitionKey]] = {}
        self._of: dict[Order, frozenset[DefinitionKey]] = {}

    def of(self, order: Order) -> frozenset[DefinitionKey]:
        """The keys of all that the call hangs on."""
        if order not in self._of:
            self._of[order] = self._found(order)
        return self._of[order]

    def _found(self, order: Order) -> frozenset[DefinitionKey]:
        keys = {DefinitionKey("formation", order.formation), DefinitionKey("motion", order.motion)}
        keys |= {DefinitionKey(kind, order.concept) for kind in _PLACES}
        keys |= {DefinitionKey("tag", tag, order.concept) for tag in order.tags}
        found = set(self._settings)
        for key in keys & self._defs.keys():
            found |= self._closure(key)
        found |= {DefinitionKey("dress", order.concept)} & self._defs.keys()
        book = self._session.book
        if book is not None and self._shows_a_defence(order):
            found |= self._closure(DefinitionKey("look", book.base_look))
        return frozenset(found)

    def spoken(self, call: str) -> frozenset[DefinitionKey]:
        order = self._session.calls.by_name.get(call)
        return self.of(order) if order is not None else frozenset()

    def _shows_a_defence(self, order: Order) -> bool:
        book = self._session.book
        assert book is not None
        concept = book.concepts[order.concept]
        tags = [book.tags[order.concept, tag] for tag in order.tags]
        bodies = (concept.body, *(tag.body for tag in tags))
        return concept.kind is Kind.RUN or any(body.reactions for body in bodies)

    @cached_property
    def _settings(self) -> frozenset[DefinitionKey]:
        return frozenset(key for key in self._defs if key.kind == "playbook")

    def _closure(self, start: DefinitionKey) -> frozenset[DefinitionKey]:
        if start not in self._closed:
            found, left = {start}, [start]
            while left:
                for key in self._named.get(left.pop(), ()):
                    if key not in found:
                        found.add(key)
                        left.append(key)
            self._closed[start] = frozenset(found)
        return self._closed[start]

    @cached_property
    def _named(self) -> dict[DefinitionKey, frozenset[DefinitionKey]]:
        """What each definition names, dress-ups and settings apart."""
        by_name: dict[tuple[str, ...], list[DefinitionKey]] = {}
        for key in self._defs:
            if key.kind not in ("dress", "playbook", "tag", "look"):
                by_name.setdefault(tuple(key.name.split()), []).append(key)
        looks = {tuple(k.name.split()): [k] for k in self._defs if k.kind == "look"}
        longest = max(map(len, (*by_name, *looks)), default=1)
        people = [key for key in self._defs if key.kind == "personnel"]
        found = {}
        for key, one in self._defs.items():
            names = looks if key.kind == "look" else by_name
            used = {used for run in _runs(one, longest) for used in names.get(run, ())}
            found[key] = frozenset(used.union(people if _of_anybody(one) else ()) - {key})
        return found


def _of_anybody(one: Definition) -> bool:
    """Whether it is a formation that does not say whose men it lines up: any personnel's."""
    named = any(line.verb == "people" for line in one.lines)
    return one.kind == "formation" and not one.parent and not named


def _runs(one: Definition, longest: int) -> Iterator[tuple[str, ...]]:
    """Every run of words, as long as a name may be, in the values of a definition."""
    for text in (one.parent, *(line.value for line in one.lines if '"' not in line.value)):
        words = tuple(_WORD.findall(text.casefold()))
        for at in range(len(words)):
            for length in range(1, min(longest, len(words) - at) + 1):
                yield words[at : at + length]

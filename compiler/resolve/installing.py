"""An install worked out: what each step puts in, and what a call is made of."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from stemline.playbook.install_definitions import InstallStep
from stemline.playbook.playbook import Playbook
from stemline.resolve.order import Order
from stemline.resolve.tags import merged


@dataclass(frozen=True)
class TaughtPart:
    """A thing that is taught: ``kind`` formation, motion, protection, concept (a run too) or tag,
    by its key; ``name`` as it is printed."""

    kind: str
    key: tuple[str, ...]
    name: str


@dataclass(frozen=True)
class Taught:
    """What a step puts in and what it teaches again, each thing once, in the order of the text."""

    step: InstallStep
    new: tuple[TaughtPart, ...]
    again: tuple[TaughtPart, ...]


@dataclass(frozen=True)
class Schedule:
    """An install worked out: ``since`` is the place of the step, from 0, that puts a thing in."""

    steps: tuple[Taught, ...]
    since: Mapping[TaughtPart, int]

    def lacking(self, parts: Iterable[TaughtPart], step: int) -> tuple[TaughtPart, ...]:
        """Those that are not in when a step is over."""
        return tuple(part for part in parts if self.since.get(part, len(self.steps)) > step)

    def before_game(self, week: int) -> int:
        """The last step before the game of a week: all days, and the weeks up to that; -1 for
        none."""
        steps = (n for n, t in enumerate(self.steps) if not t.step.weekly or t.step.number <= week)
        return max(steps, default=-1)


def parts_of(book: Playbook, order: Order) -> tuple[TaughtPart, ...]:
    """What a call is made of; of the protections those that the playbook writes itself."""
    concept = book.concepts[order.concept]
    made = [TaughtPart("formation", (order.formation,), book.formations[order.formation].name)]
    if order.motion:
        made.append(TaughtPart("motion", (order.motion,), book.motions[order.motion].name))
    made.append(TaughtPart("concept", (order.concept,), concept.name))
    tags = [book.tags[order.concept, key] for key in order.tags]
    made += [tag_part(book, order.concept, key) for key in order.tags]
    named = (said.value.casefold() for said in merged(concept.body, tags).protect)
    own = dict.fromkeys(key for key in named if key in book.protections)
    made += [TaughtPart("protection", (key,), book.protections[key].name) for key in own]
    return tuple(made)


def tag_part(book: Playbook, concept: str, key: str) -> TaughtPart:
    """A tag of a concept, both by their keys."""
    name = f"{book.tags[concept, key].name} for {book.concepts[concept].name}"
    return TaughtPart("tag", (concept, key), name)

"""Definitions by name: duplicates, unknown names, and what extends what."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property
from itertools import zip_longest

from stemline.diagnostics.catalogue.bounds import E143, E144, E145
from stemline.diagnostics.catalogue.names import E301, E302, E303, E304, INTO_ONE
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.nearest import nearest
from stemline.read.size_limits import MOST_BLOCKS, MOST_GENERATIONS, MOST_LINES
from stemline.source import Span
from stemline.syntax.tree import Block, Document, Fact, Linked, Phrase, phrases

Key = tuple[str, str, str]
"""Kind, name and, for a tag, the concept it is for; all in lower case."""

TAUGHT = ("signal", "word", "suits", "tempo", "install")
"""Labels that change no play: `read_teaching` reads them."""
_NAMED = 8
"""Blocks of a circle that are named; of a longer one the others are counted."""


class Blocks:
    """Every block of a playbook by kind and name; the first of two with one name stands."""

    def __init__(self, documents: Iterable[Document], mistakes: Iterable[Diagnostic]) -> None:
        self.by_key: dict[Key, Block] = {}
        self._by_kind: dict[str, list[Block]] = defaultdict(list)
        self._again: dict[Key, list[Block]] = defaultdict(list)
        self.broken: set[int] = set()
        self.taught: dict[Span, tuple[Block, tuple[Fact, ...]]] = {}
        self.overfull = False
        wrong: dict[str, list[int]] = defaultdict(list)
        for d in mistakes:
            if d.is_error:
                wrong[d.span.source].append(d.span.line)
        for document in documents:
            lines = sorted(wrong[document.source.name])
            ends = [b.span.line for b in document.blocks[1:]]
            for written, end in zip_longest(document.blocks, ends):
                at = bisect_left(lines, written.span.line)
                for block in map(self._untaught, written.apart):
                    self._add(block)
                    if at < len(lines) and (end is None or lines[at] < end):
                        self.broken.add(id(block))
        self.found: list[Diagnostic] = [*self._twice(), *self._bounded()]

    def is_broken(self, block: Block, found: Iterable[Diagnostic] = ()) -> bool:
        """Whether a line of the block, or of what it extends, was not read, or was not found.

        ``found`` is what its reading gave: an error among it breaks the block too.
        """
        if any(d.is_error for d in found):
            return True
        return any(id(b) in self.broken for b in (block, *self.ancestors(block)))

    def _add(self, block: Block) -> None:
        key = key_of(block)
        if self.by_key.setdefault(key, block) is not block:
            self._again[key].append(block)
        else:
            self._by_kind[block.kind].append(block)

    def _untaught(self, block: Block) -> Block:
        """The block without what is only taught and signalled, which is kept by itself."""
        taught = tuple(f for f in block.facts if f.label is not None and f.key in TAUGHT)
        if not taught or block.kind == "install":
            return block
        self.taught.setdefault(block.name.span, (block, taught))
        return replace(block, facts=tuple(f for f in block.facts if f not in taught))

    def _twice(self) -> Iterator[Diagnostic]:
        """Each name that several blocks have, once, at the second of them."""
        for key, others in self._again.items():
            first, second = self.by_key[key], others[0]
            times = "twice" if len(others) == 1 else f"{len(others) + 1} times"
            instead = _into_one(second)
            told = E301(kind=second.kind, name=second.name.text, times=times, instead=instead)
            yield told.at(
                second.name.span, related=(Related(first.name.span, "first defined here"),)
            )

    def _bounded(self) -> Iterator[Diagnostic]:
        """Kinds with more blocks than are read, and blocks with more lines, which are left out."""
        for kind, most in MOST_BLOCKS.items():
            blocks = self.of(kind)
            if len(blocks) > most:
                self.overfull = True
                at = blocks[most].name.span
                yield E144(kind=kind, most=most, found=len(blocks)).at(at)
        for block in list(self.by_key.values()):
            count = sum(_facts_of(b) for b in (block, *self.ancestors(block)))
            if count > MOST_LINES:
                at = block.name.span
                yield E145(kind=block.kind, most=MOST_LINES, found=count).at(at)
                self.by_key[key_of(block)] = self._emptied(block)

    def _emptied(self, block: Block) -> Block:
        """A block known by its name only, in its place."""
        owned = tuple(join for join in block.joins if join.connector.word == "for")
        bare = replace(block, facts=(), joins=owned)
        kind = self._by_kind[block.kind]
        kind[next(n for n, b in enumerate(kind) if b is block)] = bare
        self.broken.add(id(bare))
        return bare

    def has_many(self, block: Block) -> bool:
        """Whether the text of a tag is for other concepts too."""
        return sum(other.span == block.span for other in self.of(block.kind)) > 1

    def of(self, kind: str) -> list[Block]:
        return self._by_kind.get(kind, [])

    def names(self, kind: str) -> list[str]:
        return [b.name.text for b in self.of(kind)]

    def facts(self, block: Block) -> list[Fact]:
        """The block's facts after those of what it extends, whose keys it does not say itself."""
        facts = one_subject_each(block.facts)
        said = {fact_key(f) for f in facts}
        beside = _one_case(facts) if block.kind in ("concept", "run") else frozenset()
        for ancestor in self.ancestors(block):
            inherited = [
                f
                for f in one_subject_each(ancestor.facts)
                if fact_key(f) not in said or (f.guard is None and fact_key(f) in beside)
            ]
            beside -= {fact_key(f) for f in inherited}
            said |= {fact_key(f) for f in inherited}
            facts = inherited + facts
        return facts

    def ancestors(self, block: Block) -> list[Block]:
        """What the block extends, nearest first, the first of several parents and its own before
        the next; stops at an unknown name or a circle."""
        chain: list[Block] = []
        seen = {id(block)}
        for parent in self.parents(block):
            at: Block | None = parent
            while at is not None and id(at) not in seen and len(chain) < MOST_GENERATIONS:
                seen.add(id(at))
                chain.append(at)
                at = self._parent(at)
        return chain

    def parents(self, block: Block) -> list[Block]:
        """The blocks that a header names behind `extends`, those that are known."""
        keys = ((block.kind, name_key(name), "") for name in block.joined("extends"))
        return [self.by_key[key] for key in keys if key in self.by_key]

    def is_parent(self, block: Block, *, together: bool = False) -> bool:
        """Whether another block of its kind extends it, ``together`` with a further one."""
        return self._extended.get(id(block), 0) > int(together)

    @cached_property
    def _extended(self) -> dict[int, int]:
        """By each parent's identity, the most parents that a block which extends it has."""
        most: dict[int, int] = {}
        for block in self.by_key.values():
            parents = self.parents(block)
            for parent in parents:
                most[id(parent)] = max(most.get(id(parent), 0), len(parents))
        return most

    def _parent(self, block: Block) -> Block | None:
        """The one whose chain is followed: a further parent stands for itself."""
        name = block.join("extends")
        return None if name is None else self.by_key.get((block.kind, name_key(name), ""))

    def check_extends(self) -> list[Diagnostic]:
        """Unknown parents, circles, and chains too long to follow: each once, at its first block in
        the text. One walk through each chain finds them all."""
        found: list[Diagnostic] = []
        depth: dict[int, int] = {}  # what each block extends, counted; -1 on a circle
        order = {id(block): n for n, block in enumerate(self.by_key.values())}
        for block in self.by_key.values():
            for name in block.joined("extends"):
                parent = self.by_key.get((block.kind, name_key(name), ""))
                if parent is None:
                    near = nearest(name.text, self.names(block.kind))
                    found.append(E302(kind=block.kind, name=name.text).at(name.span, nearest=near))
                    self.broken.add(id(block))
                elif parent is not self._parent(block) and parent.joins:
                    found.append(E304(name=name.text, kind=block.kind).at(name.span))
                    self.broken.add(id(block))
            found += self._walked(block, depth, order)
        return found

    def _walked(
        self, block: Block, depth: dict[int, int], order: Mapping[int, int]
    ) -> Iterator[Diagnostic]:
        """What is wrong with the chain up from a block, as far as it was not walked before."""
        chain: list[Block] = []
        at: Block | None = block
        places: dict[int, int] = {}
        while at is not None and id(at) not in depth and id(at) not in places:
            places[id(at)] = len(chain)
            chain.append(at)
            at = self._parent(at)
        if at is not None and id(at) in places:
            circle = chain[places[id(at)] :]
            depth |= dict.fromkeys(map(id, circle), -1)
            self.broken |= set(map(id, circle))
            yield _circle(circle, min(circle, key=lambda b: order[id(b)]))
            del chain[places[id(at)] :]
        below = -1 if at is None else depth[id(at)]
        for one in reversed(chain):
            below = depth[id(one)] = below + 1
            if below > MOST_GENERATIONS:
                self.broken.add(id(one))
            if below == MOST_GENERATIONS + 1:
                name = one.join("extends")
                assert name is not None, "a block with a parent names it"
                yield E143(kind=one.kind, most=MOST_GENERATIONS).at(name.span)


def _circle(circle: Sequence[Block], first: Block) -> Diagnostic:
    """A circle of blocks, told from the first of them in the text; a long one in part."""
    start = next(n for n, block in enumerate(circle) if block is first)
    names = [block.name.text for block in (*circle[start:], *circle[:start], first)]
    if len(names) > _NAMED:
        names[_NAMED - 2 : -1] = [f"{len(names) - _NAMED + 1} others"]
    name = first.join("extends")
    assert name is not None, "a block on a circle extends another"
    return E303(kind=first.kind, path=" extends ".join(names)).at(name.span)


def _into_one(second: Block) -> str:
    """What to do with a second block of one name: a dress-up may be added to."""
    if second.kind == "dress":
        return (
            f"delete this `dress {second.name.text}` and write its lines under the first: one text "
            "has one dress-up, with as many `in` lines as you like"
        )
    return INTO_ONE


def _facts_of(block: Block) -> int:
    return sum(len(fact.subject) or 1 for fact in block.facts)


def one_subject_each(said: Iterable[Fact]) -> list[Fact]:
    """``over, under runs return`` as two facts, so that a child may replace one of them."""
    facts: list[Fact] = []
    for fact in said:
        facts += [replace(fact, subject=(one,)) for one in fact.subject] or [fact]
    return facts


def _one_case(facts: Sequence[Fact]) -> frozenset[tuple[str, str]]:
    """What a man does of which a single line speaks, and only for a case: what holds beside it is
    his parent's."""
    told = Counter(fact_key(f) for f in facts)
    return frozenset(
        fact_key(f)
        for f in facts
        if f.guard is not None and f.key in ("runs", "blocks") and told[fact_key(f)] == 1
    )


def key_of(block: Block) -> Key:
    owner = block.join("for")
    return block.kind, name_key(block.name), name_key(owner) if owner else ""


def name_key(name: Phrase) -> str:
    return name.text.casefold()


_DOES = ("runs", "blocks", "aims")
"""Verbs that give a role his job: a child that says one of them says it all."""


def adjusts_to(fact: Fact) -> str:
    """The motion to which a line of a look adjusts, as written; "" for any other line. Such a line
    leaves those that hold without a motion as they are."""
    words = [p.text.casefold() for p in phrases(fact.guard)]
    return f" when {', '.join(words)}" if words and words[0].startswith("motion") else ""


def fact_key(fact: Fact) -> tuple[str, str]:
    """What a fact speaks of: a child's fact of the same key takes the place of its parent's."""
    key = fact.key
    if key == "pair":
        return "claims", ""  # a claim by another word
    if key == "in" and fact.subject:
        return "at", fact.subject[0].text.casefold() + adjusts_to(fact)  # in a technique
    if key in _DOES and fact.subject:
        return "runs", fact.subject[0].text.casefold()  # one man, one job
    if key == "kill" and isinstance(fact.value, Linked):
        to = fact.value.link("to")
        return "kill", " ".join(p.text.casefold() for p in phrases(to)) if to is not None else ""
    subject = fact.subject[0].text.casefold() if fact.subject else ""
    subject += adjusts_to(fact)
    if fact.label is not None and key == "spot" and fact.value is not None:
        head = getattr(fact.value, "head", None)
        subject = head.text.casefold() if isinstance(head, Phrase) else ""
    return key, subject

"""Sets of a concept's calls in the trade's words: "Doubles", "Trey with Nod", "without motion".

A label names exactly the calls it is for: a player who reads it knows whether his call is one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations

from stemline.football.field import Way
from stemline.football.play import Play

Word = tuple[str, str]
"""What is said of a call: its kind ("formation", "side", "motion", "tag" ...) and the name."""

_ORDER = ("formation", "side", "motion", "still", "tag", "plain", "not", "call")
_MOST_WORDS = 4
"""Words that are tried together before a call is named in full."""


class Calling:
    """Names for sets of ``plays``, all of one concept; calls are known by their index."""

    def __init__(self, plays: Sequence[Play]) -> None:
        self._plays = tuple(plays)
        said = [_said(play) for play in plays]
        common = frozenset.intersection(*map(frozenset, said))
        self._words = tuple(tuple(w for w in words if w not in common) for words in said)
        tags = dict.fromkeys(tag for play in plays for tag in play.call.tags)
        self._without = tuple(
            tuple(("not", tag) for tag in tags if tag not in play.call.tags) for play in plays
        )
        self._twice = _twice(w for words in said for w in words)
        self._found: dict[tuple[frozenset[int], frozenset[int]], str] = {}

    def label(self, calls: Iterable[int], free: Iterable[int] = ()) -> str:
        """The words for exactly ``calls``; of the calls in ``free`` it may hold or not."""
        wanted = frozenset(calls)
        allowed = wanted | frozenset(free)
        if (wanted, allowed) not in self._found:
            self._found[wanted, allowed] = self._label(wanted, allowed)
        return self._found[wanted, allowed]

    def _label(self, wanted: frozenset[int], allowed: frozenset[int]) -> str:
        left, terms = set(wanted), list[tuple[Word, ...]]()
        while left:
            term = min(
                self._terms(wanted, allowed),
                key=lambda t: (-len(self._covers(t) & left), len(t), self._rank(t)),
            )
            if not self._covers(term) & left:
                term = (("call", self._plays[min(left)].call.spoken),)
            terms.append(term)
            left -= self._covers(term)
        return ", ".join(self._spoken(term) for term in terms)

    def _terms(self, wanted: frozenset[int], allowed: frozenset[int]) -> list[tuple[Word, ...]]:
        """Ways to say some of ``wanted`` and nothing that is not allowed, the shortest."""
        for more in (False, True):
            found = dict[tuple[Word, ...], None]()
            for call in sorted(wanted):
                words = (*self._words[call], *(self._without[call] if more else ()))
                for size in range(1, min(len(words), _MOST_WORDS) + 1):
                    for term in combinations(words, size):
                        if term not in found and self._covers(term) <= allowed:
                            found[term] = None
            if more or all(any(c in self._covers(t) for t in found) for c in wanted):
                break
        return list(found) or [(("call", self._plays[min(wanted)].call.spoken),)]

    def _covers(self, term: tuple[Word, ...]) -> frozenset[int]:
        return frozenset(
            i
            for i, play in enumerate(self._plays)
            if all(
                w in self._words[i] or w in self._without[i] or w == ("call", play.call.spoken)
                for w in term
            )
        )

    def _rank(self, term: tuple[Word, ...]) -> tuple[int, ...]:
        """Tags and motions before formations, these before sides: what is said loudest."""
        loud = ("tag", "motion", "formation", "side", "plain", "still", "not", "call")
        return tuple(sorted(loud.index(kind) for kind, _ in term))

    def _spoken(self, term: tuple[Word, ...]) -> str:
        words = sorted(term, key=lambda w: _ORDER.index(w[0]))
        front = [self._name(w) for w in words if w[0] in ("formation", "side", "motion", "call")]
        if [kind for kind, _ in words] == ["side"]:
            # A side alone is no call's name.
            front.insert(0, "called to" if front[0] in _BY_FIELD else "called")
        tags = " + ".join(self._name(w) for w in words if w[0] == "tag")
        without = [name for kind, name in words if kind == "not"]
        if tags:
            front.append(f"with {tags}" if front else tags)
        if ("still", "") in words:
            front.append("without motion")
        if ("plain", "") in words:
            front.append("without tag")
        front.extend(f"without {name}" for name in without)
        return " ".join(front)

    def _name(self, word: Word) -> str:
        kind, name = word
        return f"{kind} {name}" if name in self._twice and kind != "call" else name


_BY_FIELD = (Way.FIELD.word, Way.BOUNDARY.word)


def _said(play: Play) -> tuple[Word, ...]:
    call = play.call
    return (
        ("formation", call.formation),
        ("side", call.side_word),
        ("motion", call.motion) if call.motion else ("still", ""),
        *(("tag", tag) for tag in call.tags),
        *(() if call.tags else (("plain", ""),)),
    )


def _twice(words: Iterable[Word]) -> frozenset[str]:
    """Names that two kinds of thing share."""
    kinds: dict[str, set[str]] = {}
    for kind, name in words:
        kinds.setdefault(name, set()).add(kind)
    return frozenset(name for name, of in kinds.items() if name and len(of) > 1)

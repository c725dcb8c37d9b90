"""Letters of the defence told from ours in words: "[J]" is their man, "J" would be ours.

A page sets such a letter in a style of its own; where nothing does, the brackets stay and say it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Sequence

from stemline.diagnostics.in_words import theirs
from stemline.football.play import Assignment, Play
from stemline.football.put_to_looks import PutToLooks

_LETTER = re.compile(r"(?<![\w\[])[A-Z][A-Z0-9]?(?![\w\]])")
_GAP = re.compile(r"(?:playside|backside|strong|weak|field|boundary) $")
"""A letter after one of these words is a gap of the line and not a man."""
_SIDE = re.compile(r"\b(their|our) $", re.IGNORECASE)
"""What a coach says before a letter that both sides have."""
_READ = re.compile(r"\b(?:Read|Take the ball if) $")
"""What stands before a defender who is read; the same letter later in the sentence may be ours."""
_HELD = re.compile(r"\bHold $")
"""What stands before a rusher who is held and let by: no block on him stays."""


def each_letter(words: str, put: Callable[[str, str], str]) -> str:
    """``words`` with every man's letter as ``put`` gives it, from the letter and what is before."""

    def change(found: re.Match[str]) -> str:
        before, after = words[: found.start()], words[found.end() :]
        if _GAP.search(before) or after.startswith(" gap"):
            return found[0]
        return put(found[0], before)

    return _LETTER.sub(change, words)


def is_theirs(letter: str, before: str, play: Play, a: Assignment) -> bool:
    """Whether a letter in the words of ``a`` is the defender's whom he blocks or reads."""
    if any(hit.defender == letter for hit in a.hits):
        return True
    if play.defence is not None and _HELD.search(before):
        return True
    return bool(_READ.search(before)) and any(key.man == letter for key in play.keys)


def told(words: str, play: Play, a: Assignment) -> str:
    """The words of ``a`` with the defenders in them marked."""
    return each_letter(words, lambda x, before: mark(x) if is_theirs(x, before, play, a) else x)


def spoken(words: str, theirs: Collection[str]) -> str:
    """A coach's own words with each man of theirs marked: whoever follows "their", and a letter in
    ``theirs`` that does not follow "our"."""

    def put(letter: str, before: str) -> str:
        named = _SIDE.search(before)
        if named is not None:
            return mark(letter) if named[1].casefold() == "their" else letter
        return mark(letter) if letter in theirs else letter

    return each_letter(words, put)


def only_theirs(plays: Iterable[Play], put: PutToLooks | None = None) -> frozenset[str]:
    """Letters that are a defender's in some look and nobody's of ours in any call, among these
    plays and those that ``put`` was made of."""
    made = tuple(plays)
    looks = (play.defence for play in made if play.defence is not None)
    theirs = {d.label for look in looks for d in look.defenders}
    ours = {man.label for play in made for man in play.men}
    if put is not None:
        theirs, ours = theirs | {*put.theirs}, ours | {*put.ours}
    return frozenset(theirs - ours)


def mark(letter: str) -> str:
    return theirs(letter)


def marks(letters: Collection[str]) -> str:
    """Letters of the defence side by side."""
    return " ".join(mark(letter) for letter in letters)


def beside(man: str, role: str) -> str:
    """A role as it stands beside a man's letter: "" where he is named by that letter."""
    return role if role != man else ""


def with_men(target: str, men: Sequence[str]) -> str:
    """A look and who is there: "flat R", and "R" where the look is the man by his letter."""
    return " ".join(filter(None, (target, beside(target, " ".join(men)))))

"""Three texts → one: two coaches' changes to one file joined by what each line is about.

A line is the same line where it has the same subject, verb and guard, wherever it stands. So two
edits on neighbouring lines, or two tags put at the end of one file, are no conflict; only where one
key got two values, or one side deleted what the other changed, the coaches must speak to each
other. Order, blanks and comments are those of ours, with what is new in theirs put behind what it
stood behind there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemline.syntax.tree import Block, Document, Fact, Linked, Mark, items
from stemline.syntax.writing import written, written_fact, written_header

_Key = tuple[str, ...]
_ROW = ("row",)
_END = ("end",)
"""The key of what stands behind the last line of a block, or the last block."""


@dataclass(frozen=True)
class JoinedText:
    """The joined text; ``conflicts`` are the keys of what both sides changed, in words."""

    text: str
    conflicts: tuple[str, ...]


@dataclass(frozen=True)
class _Piece:
    """A line with the comments and blanks above it, and what it says, layout aside."""

    key: _Key
    lines: tuple[str, ...]
    says: tuple[str, ...]


@dataclass(frozen=True)
class _Part:
    """A block: its header and its lines; ``key`` is (kind, name, owner)."""

    key: _Key
    head: _Piece
    pieces: tuple[_Piece, ...]

    @property
    def says(self) -> tuple[object, ...]:
        return self.head.says, frozenset(p.says for p in self.pieces if any(p.says))

    @property
    def lines(self) -> tuple[str, ...]:
        return (*self.head.lines, *(line for p in self.pieces for line in p.lines))


def merge(base: Document, ours: Document, theirs: Document, marks: int = 7) -> JoinedText:
    """Ours with what theirs changed since ``base``. All three must be read whole.

    Conflicts stand in the text between lines of ``marks`` signs, as git has them.
    """
    return _TextJoin(marks).whole(base, ours, theirs)


class _TextJoin:
    def __init__(self, marks: int) -> None:
        self._marks = marks
        self._conflicts: list[str] = []

    def whole(self, base: Document, ours: Document, theirs: Document) -> JoinedText:
        single = _single(base, ours, theirs)
        parts = [_parts(tree, single) for tree in (base, ours, theirs)]
        lines = list(self._blocks(*parts))
        return JoinedText("".join(f"{line}\n" for line in lines).strip("\n") + "\n",
                      tuple(self._conflicts))  # fmt: skip

    def _blocks(
        self, base: Sequence[_Part], ours: Sequence[_Part], theirs: Sequence[_Part]
    ) -> Iterator[str]:
        was, mine, yours = ({part.key: part for part in parts} for parts in (base, ours, theirs))
        for key in _order([p.key for p in ours], [p.key for p in theirs]):
            yield from self._block(key, was.get(key), mine.get(key), yours.get(key))

    def _block(
        self, key: _Key, was: _Part | None, mine: _Part | None, yours: _Part | None
    ) -> Iterator[str]:
        """One block; None on a side where it is not."""
        if mine is None or yours is None:
            one = mine or yours
            assert one is not None
            if was is None:
                yield from one.lines
            elif one.says != was.says:
                self._conflicts.append(" ".join(filter(None, key)))
                yield from self._both(mine.lines if mine else (), yours.lines if yours else ())
            return
        yield from self._line(was.head if was else None, mine.head, yours.head, key)
        sides = (was.pieces if was is not None else (), mine.pieces, yours.pieces)
        kept = _without_other(*sides)
        unit = _unit(mine) or _unit(yours)
        before, after, there = ({p.key: p for p in pieces} for pieces in sides)
        for fact in _order(list(after), list(there)):
            yield from self._line(
                before.get(fact),
                after.get(fact),
                _at_margin(there.get(fact), unit),
                key,
                apart=fact not in kept,
            )

    def _line(
        self,
        was: _Piece | None,
        mine: _Piece | None,
        yours: _Piece | None,
        block: _Key,
        *,
        apart: bool = False,
    ) -> Iterator[str]:
        """One line. ``apart``: both sides put another in the place of one that they took away."""
        old, new, other = (p.says if p is not None else None for p in (was, mine, yours))
        if not apart and (new == other or other == old):
            chosen = mine
        elif not apart and new == old:
            chosen = yours
        else:
            said = mine or yours or was
            assert said is not None
            self._conflicts.append(f"{' '.join(filter(None, block))}: {said.says[-1].strip()}")
            yield from self._both(mine.lines if mine else (), yours.lines if yours else ())
            return
        yield from chosen.lines if chosen is not None else ()

    def _both(self, mine: Iterable[str], yours: Iterable[str]) -> Iterator[str]:
        yield "<" * self._marks + " ours"
        yield from mine
        yield "=" * self._marks
        yield from yours
        yield ">" * self._marks + " theirs"


def _unit(part: _Part) -> str:
    """The margin of a block's lines."""
    lines = (line for piece in part.pieces for line in piece.lines if line.strip())
    first = next(lines, "")
    return first[: len(first) - len(first.lstrip())]


def _at_margin(piece: _Piece | None, unit: str) -> _Piece | None:
    """The piece with the margin of the block that it is put into: a coach may have his own."""
    if piece is None or not unit:
        return piece
    margin = unit * (2 if piece.key[:1] == _ROW else 1)
    lines = tuple(margin + line.strip() if line.strip() else "" for line in piece.lines)
    return replace(piece, lines=lines) if piece.key != _END else piece


def _single(*trees: Document) -> set[tuple[_Key, _Key]]:
    """What a block says once in each text: another value of it is that line changed."""
    counts: Counter[tuple[_Key, _Key]] = Counter()
    for tree in trees:
        here = Counter(
            (_name(b), about) for b in tree.blocks for f in b.facts for about in _about(f)
        )
        for key, number in here.items():
            counts[key] = max(counts[key], number)
    return {key for key, number in counts.items() if number == 1}


def _name(block: Block) -> _Key:
    names = ", ".join(map(written, (block.name, *block.also)))
    owners = ", ".join(map(written, block.joined("for")))
    return block.kind, names.casefold(), owners.casefold()


def _about(fact: Fact) -> tuple[_Key, ...]:
    """What a line is about, once for each of its subjects."""
    guard = written(fact.guard).casefold()
    if fact.label is not None:
        return (("", fact.key, guard),)
    return tuple((written(s).casefold(), fact.key, guard) for s in fact.subject)


def _called(fact: Fact) -> str | None:
    """The call that a line gives a name, a short one or a number: it has one of each, however many
    such lines there are."""
    if (
        fact.key in ("call", "short", "number")
        and fact.label is not None
        and isinstance(fact.value, Linked)
    ):
        return written(fact.value.head).casefold()
    return None


def _parts(tree: Document, single: set[tuple[_Key, _Key]]) -> tuple[_Part, ...]:
    lines = tree.source.lines
    found: list[_Part] = []
    at = 0
    seen: Counter[_Key] = Counter()
    for n, block in enumerate(tree.blocks):
        name = _name(block)
        head = _piece(("head",), lines, at, block.span.line, written_header(block))
        at = block.span.line
        pieces = []
        for fact in block.facts:
            text = written_fact(fact)
            key = tuple(word for about in _about(fact) for word in about)
            if (called := _called(fact)) is not None:
                key = (*key, called)
            elif any((name, about) not in single for about in _about(fact)):
                key = (*key, text.casefold() if '"' not in text else text)
            pieces.append(_piece(key, lines, at, fact.span.line, text))
            at = fact.span.line
            for row in fact.rows:
                call = items(row.value, Mark.AND)[0] if row.label is None else None
                said = written(call) if call is not None else row.key
                key = (*_ROW, text, said.casefold())
                pieces.append(_piece(key, lines, at, row.span.line, written_fact(row)))
                at = row.span.line
        end = _inner_end(lines, at, n + 1 == len(tree.blocks))
        if end > at:
            pieces.append(_piece(_END, lines, at, end, ""))
            at = end
        seen[name] += 1
        key = name if seen[name] == 1 else (*name, str(seen[name]))
        found.append(_Part(key, head, tuple(pieces)))
    return tuple(found)


def _inner_end(lines: Sequence[str], at: int, last: bool) -> int:
    """Where a block ends: behind the comments in its margin; at the last, behind everything."""
    if last:
        return len(lines)
    end = at
    for n in range(at, len(lines)):
        text = lines[n]
        if text.strip() and not text[:1].isspace():
            break
        if text.strip():
            end = n + 1
    return end


def _piece(key: _Key, lines: Sequence[str], start: int, end: int, says: str) -> _Piece:
    """Lines ``start`` to ``end``: the last is what it says, the others comments and blanks."""
    mine = tuple(line.rstrip() for line in lines[start:end])
    comments = [line.strip() for line in mine if line.strip().startswith("//")]
    behind = mine[-1].partition("//")[2] if mine and says else ""
    return _Piece(key, mine, (*comments, behind.strip(), says))


def _order(ours: Sequence[_Key], theirs: Sequence[_Key]) -> list[_Key]:
    """Ours, and what only theirs have behind what it stands behind there, before the end."""
    order = list(ours)
    for n, key in enumerate(theirs):
        if key in order:
            continue
        above = next((k for k in reversed(theirs[:n]) if k in order and k != _END), None)
        place = order.index(above) + 1 if above is not None else 0
        while place < len(order) and order[place] not in theirs and order[place] != _END:
            place += 1
        order.insert(place, key)
    return order


def _without_other(
    base: Sequence[_Piece], ours: Sequence[_Piece], theirs: Sequence[_Piece]
) -> set[_Key]:
    """The keys that stand for themselves. Not those of a kind of line of which both sides took the
    same one away and each put another: that is one line with two values."""
    gone = {p.key for p in base} - {p.key for p in ours} - {p.key for p in theirs}
    mine = {p.key for p in ours} - {p.key for p in base}
    yours = {p.key for p in theirs} - {p.key for p in base}
    both = mine & yours
    torn = {
        key
        for key in (mine | yours) - both
        if any(g[:3] == key[:3] for g in gone)
        and any(k[:3] == key[:3] for k in mine - both)
        and any(k[:3] == key[:3] for k in yours - both)
    }
    return {p.key for p in (*base, *ours, *theirs)} - torn

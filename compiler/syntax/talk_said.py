"""Sentences of a coach's talk, put as the notation has them: ``backside guard pulls through the
hole for the linebacker``, ``centre and backside guard double the nose to Mike``, ``C presses #1
strong``.

Asked about a line that turns on no word of its block, and about one that does and holds words that
no such line has: the two kinds of rows in `talk_of_plays` and `talk_of_looks`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from lark import Token

from stemline.syntax.talk_of_looks import LOOKS, LOOKS_TURNED
from stemline.syntax.talk_of_plays import PLAYS, PLAYS_TURNED

_UNTURNED, _TURNED = (*PLAYS, *LOOKS), (*PLAYS_TURNED, *LOOKS_TURNED)


@cache
def _compiled(turned: bool, kind: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    table = _TURNED if turned else _UNTURNED
    return tuple((re.compile(text), said) for kinds, text, said in table if kind in kinds.split())


def talked(kind: str, line: Sequence[Token], *, turned: bool = False) -> list[Token] | None:
    """The line as a block of ``kind`` has it; None for one that is not known to be said so."""
    rows = _compiled(turned, kind)
    if not rows or any(token.type == "STRING" for token in line):
        return None
    text, starts = "", []
    for token in line:
        starts.append(len(text))
        text += f"{token.casefold()} "
    text = text[:-1]
    for pattern, said in rows:
        found = pattern.fullmatch(text)
        if found is not None:
            return _made(said, found, line, starts)
    return None


def _made(
    said: str, found: re.Match[str], line: Sequence[Token], starts: Sequence[int]
) -> list[Token]:
    at = line[min(1, len(line) - 1)]
    made: list[Token] = []
    for piece in re.findall(r'"[^"]+"|\{\w+\}|[^\s{}]+', said):
        if piece.startswith('"'):
            made.append(Token.new_borrow_pos("STRING", piece.format(**found.groupdict()), at))
            continue
        if not piece.startswith("{"):
            made.append(_token(piece, at))
            continue
        start, end = found.span(piece[1:-1])
        taken = [t for t, s in zip(line, starts, strict=True) if start <= s < end]
        if piece == "{him}":
            taken = [t for t in taken if t.casefold() != "the"]
        made += _men(taken) if piece == "{who}" else taken
    return made


def _token(word: str, at: Token) -> Token:
    return Token.new_borrow_pos("_AND" if word == "," else "WORD", word, at)


def sided(line: Sequence[Token]) -> list[Token]:
    """``backside guard, tackle`` with a side for each."""
    return _men(line)


def _men(said: Sequence[Token]) -> list[Token]:
    """``the guards`` as ``each guard``, ``backside guard and tackle`` with a side for each."""
    men: list[list[Token]] = [[]]
    commas: list[Token] = []
    for token in said:
        if token.type == "_AND" or token.casefold() == "and":
            commas.append(Token.new_borrow_pos("_AND", ",", token))
            men.append([])
        elif token.casefold() != "the" or men[-1]:
            men[-1].append(token)
    made: list[Token] = []
    side: Token | None = None
    for number, man in enumerate(men):
        if number:
            made.append(commas[number - 1])
        words = [token.casefold() for token in man]
        if len(man) == 1 and words[0] in _MANY:
            man = [_token("each", man[0]), _token(_MANY[words[0]], man[0])]
        elif len(man) == 2 and words[0] in ("both", "all", "each") and words[1] in _MANY:
            man = [_token("each", man[0]), _token(_MANY[words[1]], man[1])]
        elif len(man) == 1 and words[0] in _MANY.values() and side is not None:
            man = [Token.new_borrow_pos("WORD", str(side), man[0]), *man]
        side = (
            man[0]
            if len(man) > 1 and words[0] in ("playside", "backside", "left", "right")
            else side
        )
        made += man
    return made


_MANY = {"guards": "guard", "tackles": "tackle", "ends": "end"}

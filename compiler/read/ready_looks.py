"""The front that a playbook without a look is drawn against: written in the notation, as a coach's
own would be.

Common practice, no published source: four down, or as many as face a shorter line, with the 3
technique to the tight end; the linebackers over the guards; the rest over receivers. Nobody has a
duty on a pass, so it shows no coverage and decides no guard.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from stemline.playbook.look_definitions import BASE_FRONT, LookDef
from stemline.playbook.playbook import Playbook
from stemline.read.read_looks import read_facts
from stemline.source import Source

# Who stands first is there in every code of that line; the last come with more players.
_FIVE = """
look Base Front
    strength tight end
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 10, strong
    W at 30, weak
    C at strong #1, 1 outside or outside end, 7 deep, strong
    B at weak #1 or outside end, weak, 7 deep
    F at middle, 12 deep
    S at strong #3 or apex or outside end, strong, 5 deep
    R at weak #2 or hash, weak, 9 deep
    H at strong #2 or tackle, strong, 8 deep
"""
_THREE = """
look Base Front
    strength tight end
    E at 5, strong
    N at 0
    J at 5, weak
    M at 20, strong
    W at 20, weak
    C at strong #1 or outside end, strong, 7 deep
    B at weak #1 or outside end, weak, 7 deep
    F at ball, 10 deep
    S at strong #2 or apex or outside end, strong, 5 deep
"""
_ONE = """
look Base Front
    strength tight end
    E at 3, strong
    J at 3, weak
    M at 00
    C at strong #1 or outside end, strong, 6 deep
    B at weak #1 or outside end, weak, 6 deep
    F at ball, 9 deep
"""


def look_of(book: Playbook, key: str) -> LookDef:
    """The playbook's own look of that key, or the base front of its code."""
    if key != BASE_FRONT:
        return book.looks[key]
    code = book.settings.code
    return base_front(len(code.line), code.players.value, code.receivers)


@cache
def base_front(line: int, players: int, receivers: int) -> LookDef:
    """The front against a line of so many men, for a side of so many players, of whom
    ``receivers`` may go out for a pass."""
    # Where all trees are known, and no play asks for this, nothing is parsed.
    from stemline.syntax.parser import parse

    texts = {1: _ONE, 3: _THREE}
    document, problems = parse(Source("base front", texts.get(line, _FIVE)))
    (block,) = document.blocks
    look, found = read_facts(block.name, block.facts, receivers)
    assert not problems and not found, (problems, found)
    return replace(look, stands=dict(list(look.stands.items())[:players]))

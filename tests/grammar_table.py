"""The table of the grammar, `grammar/table.json`: `python -m tests.grammar_table` writes it."""

from __future__ import annotations

import json
from itertools import count
from pathlib import Path
from typing import Any

from lark.grammar import Rule
from lark.lexer import TerminalDef

from stemline.syntax.grammar_table import FILE, grammar, made, seal

PLACE = Path(__file__).parent.parent / "grammar" / FILE
_SHIFT = 0
"""What stands before the state that comes next; before a rule stands another number."""


def written() -> str:
    """What stands in the file: the same wherever it is made."""
    text = grammar()
    data, memo = made(text).memo_serialize([TerminalDef, Rule])
    data["parser"]["parser"] |= in_order(data["parser"]["parser"])
    table = json.dumps([data, memo], separators=(",", ":"))
    return f"{seal(text, table)}\n{table}\n"


def in_order(parser: dict[str, Any]) -> dict[str, Any]:
    """The table with its states as they are met from the first, by the names of what leads there:
    the parser's own numbers hang on the order of a set."""
    names = parser["tokens"]
    states = {
        state: {names[key]: does for key, does in row.items()}
        for state, row in parser["states"].items()
    }
    numbers: dict[int, int] = {}
    waiting = [*parser["start_states"].values()]
    numbered = count()
    for state in waiting:
        if state in numbers:
            continue
        numbers[state] = next(numbered)
        row = states[state]
        waiting += [row[name][1] for name in sorted(row) if row[name][0] == _SHIFT]
    assert numbers.keys() == states.keys()
    known = {name: number for number, name in enumerate(sorted(names.values()))}

    def moved(does: tuple[int, Any]) -> tuple[int, Any]:
        action, to = does
        return (action, numbers[to]) if action == _SHIFT else (action, to)

    return {
        "tokens": {number: name for name, number in known.items()},
        "states": {
            number: {known[name]: moved(states[state][name]) for name in sorted(states[state])}
            for state, number in numbers.items()
        },
        "start_states": {name: numbers[at] for name, at in parser["start_states"].items()},
        "end_states": {name: numbers[at] for name, at in parser["end_states"].items()},
    }


if __name__ == "__main__":
    PLACE.write_text(written(), "utf-8")

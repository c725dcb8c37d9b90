"""The parser's walk over its table, token by token.

The library's own walk looks each rule up anew, by a key that takes long to compare, also where one
value only passes for another; here that is settled once.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from lark import Token
from lark.grammar import Rule
from lark.parsers.lalr_analysis import Shift
from lark.parsers.lalr_parser_state import ParseConf, ParserState

_Reduction = tuple[int, str, Callable[[list[Any]], Any] | None]
"""How many values a rule takes, what it makes, and how: None where it passes its one value on."""


class Walk:
    """Feeds the tokens of blocks; ``conf`` is the parser's table and what builds the tree."""

    def __init__(self, conf: ParseConf[int]) -> None:
        self._rows: dict[int, dict[str, int | _Reduction]] = {
            state: {
                name: to if action is Shift else _reduction(to, conf)
                for name, (action, to) in row.items()
            }
            for state, row in conf.states.items()
        }

    def feed(self, state: ParserState[int], token: Token) -> None:
        """As ``state.feed_token``. Raises UnexpectedToken as that."""
        states, values, rows, kind = state.state_stack, state.value_stack, self._rows, token.type
        while (does := rows[states[-1]].get(kind)) is not None:
            if isinstance(does, int):
                states.append(does)
                values.append(token)
                return
            size, made, build = does
            if build is None:
                states.pop()
            elif size:
                taken = values[-size:]
                del states[-size:], values[-size:]
                values.append(build(taken))
            else:
                values.append(build([]))
            states.append(rows[states[-1]][made])  # type: ignore[arg-type]
        state.feed_token(token)


def _reduction(rule: Rule, conf: ParseConf[int]) -> _Reduction:
    size, only = len(rule.expansion), rule.expansion[:1]
    passes = size == 1 and rule.options.expand1 and rule.alias is None and not only[0].is_term
    builders: dict[Any, Callable[[list[Any]], Any]] = conf.callbacks
    build = None if passes and not only[0].name.startswith("_") else builders[rule]
    return size, str(rule.origin.name), build

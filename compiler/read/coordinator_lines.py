"""Lines of a coach who half remembers the notation: a place, a side or a second choice behind a
comma that the line does not have, and a depth said as another kind of line says it. More rows of
the table of `own_words`, asked before all others.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.read.coach_lines import Answer, typed

_SIDE = r"left|right|strong|weak|call|away|field|boundary|playside|backside"
_PLAYS = "concept run tag"


def _one_way(found: re.Match[str]) -> str:
    line, side = typed(f"toward {found['side']}"), found["side"].casefold()
    if side.endswith("tight end"):
        return f"{line}: where none stands, or one on each side, it goes by the strong side"
    return line


def _deep_in_a_route(found: re.Match[str]) -> str:
    """`deep` is a depth of men who line up; a route's is a number, behind the line said so."""
    ends = re.search(r" (?:to|over|across|decides) |^decides", found["head"])
    at = found["at"] if ends and found["at"] else ""
    lines = " · ".join(
        typed(f"{found['head']} {at}{found['n']}{behind}{found['rest']}")
        for behind in ("", " behind")
    )
    return f"past the line, or behind it? {lines}"


def _each_of_two(found: re.Match[str]) -> str:
    does = typed(f"each {found['n']} runs go")
    return (
        f"a name is one man's: leave this line out and write `each {found['n']}` in the others, "
        f"such as {does}"
    )


_BEHIND = r",? (?P<n>\d+(?:\.\d+)?)(?: yards?)? (?:behind|back)(?: the (?:line|ball))?"

COORDINATOR_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("run concept tag", r"toward (?:the )?(?P<side>[^,]+?)(?: or |, ?).+", _one_way),
    (_PLAYS, r"kill to (?P<to>[^,]+), ?(?P<side>away|call|left|right) when (?P<when>.+)",
     r"kill to \g<to> \g<side> when \g<when>"),
    (_PLAYS, rf"(?P<who>.+?) aims outside(?: the)?(?: tight)? ends?,? (?P<side>{_SIDE})(?: side)?",
     r"\g<who> aims \g<side> outside the end"),
    (_PLAYS, rf"(?P<who>.+?) aims (?P<point>[ABCD]|guard|tackle|end)(?: gap)?, ?"
             rf"(?P<side>{_SIDE})(?: side)?", r"\g<who> aims \g<side> \g<point>"),
    (_PLAYS, r"(?P<role>.+?) is each (?P<n>#\d)", _each_of_two),
    ("concept run tag route", r"(?P<head>(?:.+ runs|stroke|.* then|decides) .*?)(?P<at>at )?"
     r"(?P<n>\d+(?:\.\d+)?)(?: yards?)? deep(?P<rest>.*)", _deep_in_a_route),
    ("formation motion look", rf"(?P<head>.+? (?:at|in|to|from) \S.*?){_BEHIND}(?P<rest> then .+)?",
     r"\g<head>, \g<n> deep\g<rest>"),
)  # fmt: skip
"""Each row as those of `coach_lines`."""

"""Lines as they are called out from the sideline that no single line can mean: what is asked back,
or the two lines to type. More rows of the table of `own_words`.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.read.coach_lines import Answer, typed


def _parent(found: re.Match[str]) -> str:
    line = typed(f"look … extends {found['name']}")
    return f"it stands in the block's first line, behind the name: {line}"


def _together(found: re.Match[str]) -> str:
    first, second = (re.sub(r"^the ", "", found[name]) for name in ("first", "second"))
    lines = typed(f"{first} blocks double with {second}", f"{second} blocks double with {first}")
    return f"each of the two says it: {lines}"


def _gap(found: re.Match[str]) -> str:
    line = typed(f"{found['who']} rushes B, strong{found['rest'] or ''}")
    return f"through which gap, and on which side? such as {line}"


def _out_at_once(found: re.Match[str]) -> str:
    line = typed(f"{found['who']} runs {found['route']}")
    return (
        f"a man has one job, and is out at once: {line}; who strikes a rusher first "
        + typed(f"{found['who']} blocks chip")
    )  # fmt: skip


_YARDS_IN_A_METRE = 1 / 0.9144
"""The international yard of 1959."""
_METRES = re.compile(r"(\d+(?:\.\d+)?) ?(?:met(?:re|er)s?|m)\b", re.IGNORECASE)
_NUMBERS = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5"}
_NUMBER = rf"(?P<n>{'|'.join(_NUMBERS)}|[1-5])"
_COUNTED = r"strong|weak|call|away|left|right|field|boundary|each"
_FEET = r"catch|quick|[1357]|hitch|reset|fake"


def _in_yards(found: re.Match[str]) -> str:
    """To half a yard, as men are lined up."""
    line = _METRES.sub(
        lambda m: f"{round(2 * float(m[1]) * _YARDS_IN_A_METRE) / 2:g}", found.string
    )
    return f"a number is yards: {typed(line)}"


def _ranked(found: re.Match[str]) -> str:
    number = found["n"].casefold()
    man = f"{found['side']} #{_NUMBERS.get(number, number)}"
    return typed(f"{found['head']}{man}{found['rest']}")


SIDELINE_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("concept run tag route formation motion",
     rf"(?!.* runs (?:an? |the )?\d).*{_METRES.pattern}.*", _in_yards),
    ("look", r".*\d ?met(?:re|er)s?\b.*", _in_yards),
    ("concept tag", r"(?P<head>.+ runs [a-z][a-z ]* \d+(?:\.\d+)?) ?(?:yrds?|yd)\b(?P<rest>.*)",
     r"\g<head>\g<rest>"),
    ("concept run tag", rf"(?P<head>(?:.*? )?)(?P<side>{_COUNTED}) (?:(?:number|no\.?) )?"
                        rf"{_NUMBER}\b(?P<rest>(?! back).*)", _ranked),
    ("concept run tag", rf"(?P<head>(?:.*? )?)(?:number|no\.?) {_NUMBER}"
                        rf" (?P<side>{_COUNTED})\b(?P<rest>.*)", _ranked),
    ("concept run tag", r"(?P<head>.+ when (?:.*[ ,])?)(?P<strong>\d) ?by ?(?P<weak>\d)"
                        r"(?P<rest>.*)", r"\g<head>\g<strong>x\g<weak>\g<rest>"),
    ("concept tag", r"alert (?P<who>.+?) if (?P<when>.+)", r"alert \g<who> when \g<when>"),
    ("concept run tag", rf"feet (?P<steps>(?:{_FEET})(?: (?:{_FEET}))+)",
     lambda m: typed(f"feet {', '.join(m['steps'].split())}")),
    ("look", r"extends (?P<name>.+)", _parent),
    ("look", r"(?P<who>\w{1,2}) (?:blitz(?:es)?|rush(?:es)?|comes)(?P<rest> when .+)?", _gap),
    ("run", r"(?P<first>[^,]+?) and (?P<second>[^,]+?) doubles?(?: ?team)?(?: .+)?", _together),
    ("run", r"(?P<head>.+ aims )outside (?:the )?\w+", r"\g<head>outside the end"),
    ("concept tag", r"(?P<who>.+?) blocks(?: first)? (?:and )?then runs (?P<route>.+)",
     _out_at_once),
    ("concept tag", r"(?P<who>.+?) blocks (?:the |their )?(?:corner|safety|overhang|linebacker|"
                    r"defender|man over him)", r"\g<who> blocks stalk"),
    ("concept tag", r"(?:the )?(?:guards?|tackles?|line(?:men)?|cent(?:er|re)).* releases?\b.*",
     lambda _: f"the line of a screen gets out by its protection: {typed('protect screen')}"),
    ("dress", r"suits .+", lambda _: "this line stands in the concept or the run itself"),
)  # fmt: skip
"""Each row as those of `coach_lines`; asked before all others."""

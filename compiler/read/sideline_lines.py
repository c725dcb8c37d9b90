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


SIDELINE_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("look", r"extends (?P<name>.+)", _parent),
    ("look", r"(?P<who>\w{1,2}) (?:blitz(?:es)?|rush(?:es)?|comes)(?P<rest> when .+)?", _gap),
    ("run", r"(?P<first>[^,]+?) and (?P<second>[^,]+?) doubles?(?: ?team)?(?: .+)?", _together),
    ("run", r"(?P<head>.+ aims )outside (?:the )?\w+", r"\g<head>outside the end"),
    ("concept tag", r"(?P<who>.+?) blocks(?: first)? (?:and )?then runs (?P<route>.+)",
     _out_at_once),
    ("dress", r"suits .+", lambda _: "this line stands in the concept or the run itself"),
)  # fmt: skip
"""Each row as those of `coach_lines`; asked before all others."""

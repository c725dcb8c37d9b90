"""The page of messages, `grammar/errors.md`: what stands in a check's file is written into it.

    python -m tests.errors_page            writes the page
    python -m tests.errors_page rules      lists the rules that there are, and the next number

A check tells each of its codes in `SAMPLES`, as the page has them: what it means on the field, a
text that has it, the same text mended. A text that is nearly that of another code, of whichever
check, says so: `like E540` (or `like E540 mended`), then the lines that go with a minus, those that
come with a plus, and where a plus alone would not say its place, the line above it behind a blank.
A rule of the rule books has a warning, too, where its figure is in doubt: without a text of its own
it is told as the error. The sections of all other codes are written on the page itself. A new
section takes its place behind the code with the next lower number, a code that is no more loses its
own, and every title is the row's.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path

import stemline.checks
import stemline.checks.legality
from stemline.checks.discovered import files, rows, wordings
from stemline.diagnostics.broken_rule import BrokenRule

PAGE = Path(__file__).parent.parent / "grammar" / "errors.md"

_FENCE = re.compile(r"^(```play[^\n]*)\n(.*?)\n```$", re.MULTILINE | re.DOTALL)
_HEAD = re.compile(r"^(?=##+ )", re.MULTILINE)
_SECTION = re.compile(r"### ([EW]\d{3})\b.*\n")
_DOUBT = "No sample: it is {} in a code for which no text of the rule was seen, and warns only."


def told_by_checks() -> dict[str, str]:
    """What the checks' files say of their codes, every text whole, without the heads."""
    checks = files(stemline.checks)
    told = told_once(part for file in checks for part in _sections(getattr(file, "SAMPLES", "")))
    told |= {doubt: _DOUBT.format(code) for doubt, code in doubted().items() if doubt not in told}
    texts = {
        name: text.splitlines()
        for code, body in told.items()
        for name, (_, text) in zip((code, f"{code} mended"), _FENCE.findall(body), strict=False)
    }

    def whole(code: str, fence: re.Match[str]) -> str:
        try:
            return "\n".join((fence[1], *_whole(fence[2].splitlines(), texts), "```"))
        except LookupError as wrong:
            raise SystemExit(f"SAMPLES of {code}: {wrong.args[0]}") from wrong

    return {code: _FENCE.sub(partial(whole, code), body) for code, body in told.items()}


def doubted() -> dict[str, str]:
    """The warnings of rules that are errors where their figure is published, with the error."""
    rules = (row for row in rows() if issubclass(row, BrokenRule))
    names = (row.__name__ for row in rules if row.__name__.startswith("E"))
    return {f"W{name[1:]}": name for name in names}


def doubted_only() -> set[str]:
    """Those of them that have no text of their own."""
    told = "".join(getattr(file, "SAMPLES", "") for file in files(stemline.checks))
    return {code for code in doubted() if f"### {code}" not in told}


def rules() -> Iterator[str]:
    """The rules of the rule books by number, each with its code, its title and the question of its
    file, and the next number that is free."""
    room = stemline.checks.legality.__name__
    for row in rows():
        if row.__module__.startswith(f"{room}."):
            file = sys.modules[row.__module__]
            question = " ".join((file.__doc__ or "").partition("\n\n")[0].split())
            name = row.__module__.removeprefix(f"{room}.")
            yield f"{row.__name__} {row.title} ({name}.py): {question}"
    taken = {int(code[1:]) for code in wordings()}
    yield f"The next number is {max(n for n in taken if n < 590) + 1}."


def told_once(sections: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Each code's section. Raises SystemExit for a code that two checks tell."""
    told: dict[str, str] = {}
    for code, body in sections:
        if code in told:
            raise SystemExit(f"{code} is told by two checks: take the next number")
        told[code] = body
    return told


def _whole(lines: Sequence[str], texts: Mapping[str, Sequence[str]]) -> Sequence[str]:
    """A text of which only what it has otherwise may be said. Raises LookupError where it is like
    a code that no check has."""
    first, *changes = lines
    if not first.startswith("like "):
        return lines
    other = first.removeprefix("like ")
    if other not in texts:
        raise LookupError(f"no check has a text {other}")
    return _changed(_whole(texts[other], texts), changes)


def _changed(lines: Sequence[str], changes: Sequence[str]) -> list[str]:
    """Lines with some taken out and put in. Raises LookupError for one that is not there, or that
    stands before the one that was taken out last."""
    made, left = list[str](), list(lines)
    for change in changes:
        sign, line = change[0], change[1:]
        if sign == "+":
            made.append(line)
            continue
        if line not in left:
            raise LookupError(f"{line.strip()!r} is no line there, or is behind a later one")
        at = left.index(line)
        made += left[: at + (sign == " ")]
        left = left[at + 1 :]
    return made + left


def generated(page: str) -> str:
    """The page anew, from what stands on it and in the checks."""
    checks, titles = told_by_checks(), wordings()
    parts = []
    for part in _HEAD.split(page):
        code = _code(part)
        if code is None:
            parts.append(part)
        elif code in titles:
            body = checks.pop(code, _SECTION.sub("", part, count=1))
            parts.append(_section(code, body))
    for code, body in checks.items():
        known = {_place(other): n for n, part in enumerate(parts) if (other := _code(part))}
        before = max(place for place in known if place < _place(code))
        parts.insert(known[before] + 1, _section(code, body))
    return "".join(parts)


def _sections(text: str) -> list[tuple[str, str]]:
    parts = (part for part in _HEAD.split(text) if part.strip())
    return [(code, _SECTION.sub("", part, count=1)) for part in parts if (code := _code(part))]


def _section(code: str, body: str) -> str:
    return f"### {code} {wordings()[code].title}\n\n{body.strip()}\n\n"


def _code(part: str) -> str | None:
    found = _SECTION.match(part)
    return found[1] if found else None


def _place(code: str) -> tuple[str, str]:
    """By number, an error before its warning."""
    return code[1:], code


if __name__ == "__main__" and sys.argv[1:] == ["rules"]:
    print("\n".join(rules()))
elif __name__ == "__main__":
    PAGE.write_text(generated(PAGE.read_text("utf-8")), "utf-8")

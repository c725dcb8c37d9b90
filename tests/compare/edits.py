"""Known changes made to a playbook's texts, each with what a comparison must say of it.

A text is cut into blocks and lines by margins alone, so nothing here leans on the parser.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

_NUMBER = re.compile(r"(?<![\w#.\"-])(\d+)(?![\w.x-])")
_MOVED_BY = 1
_KINDS = ("formation", "motion", "concept", "run", "protection", "look", "tag", "personnel")


@dataclass(frozen=True)
class Text:
    """A playbook: the lines of each file."""

    files: tuple[tuple[str, tuple[str, ...]], ...]

    def lines(self) -> list[tuple[int, int, str]]:
        return [
            (f, n, line) for f, (_, lines) in enumerate(self.files) for n, line in enumerate(lines)
        ]

    def put(self, file: int, at: int, away: int, *new: str) -> Text:
        name, lines = self.files[file]
        changed = (*lines[:at], *new, *lines[at + away :])
        return Text((*self.files[:file], (name, changed), *self.files[file + 1 :]))

    def each(self, change: Callable[[str], str]) -> Text:
        return Text(tuple((name, tuple(map(change, lines))) for name, lines in self.files))


@dataclass(frozen=True)
class Expected:
    """What must be told: (heading of the definition, line before, line now), and new names."""

    lines: frozenset[tuple[str, str, str]] = frozenset()
    renamed: frozenset[tuple[str, str]] = frozenset()
    added: frozenset[str] = frozenset()
    gone: frozenset[str] = frozenset()
    roles: frozenset[tuple[str, str]] = frozenset()
    touched: frozenset[str] = field(default=frozenset())


_TYPED = {"what is done off the key": ("give", "pull", "throw", "pitch"), "kills": ("kill",)}
"""Lines that are printed one behind another, under what a comparison calls them."""
Edit = Callable[[Text, random.Random], tuple[Text, Expected] | None]


def blocks(text: Text, *kinds: str) -> list[tuple[int, int, int]]:
    """(file, first line, line behind the last) of each block of the kinds."""
    found = []
    for f, (_, lines) in enumerate(text.files):
        heads = [n for n, line in enumerate(lines) if line[:1].isalpha()]
        for n, end in zip(heads, (*heads[1:], len(lines)), strict=True):
            if lines[n].split()[0] in kinds:
                found.append((f, n, end))
    return found


def title(line: str) -> str:
    return line.split(" extends ")[0].strip()


def _facts(text: Text, block: tuple[int, int, int]) -> list[int]:
    f, start, end = block
    lines = text.files[f][1]
    return [n for n in range(start + 1, end) if lines[n].startswith("    ")]


def _said(line: str) -> str:
    return " ".join(line.split())


def another_number(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """One figure of one line is another."""
    block = draw.choice(blocks(text, *_KINDS))
    f, start, _ = block
    lines = text.files[f][1]
    choices = [n for n in _facts(text, block) if '"' not in lines[n] and _NUMBER.search(lines[n])]
    choices = [n for n in choices if "when" not in lines[n] and not _gathers(lines[n])]
    if not choices:
        return None
    at = draw.choice(choices)
    old = lines[at]
    spot = draw.choice(list(_NUMBER.finditer(old)))
    new = old[: spot.start()] + str(int(spot[1]) + _MOVED_BY) + old[spot.end() :]
    if any(_said(lines[n]) == _said(new) for n in _facts(text, block)):
        return None
    head = title(lines[start])
    told = frozenset({(head, _said(old), _said(new))})
    return text.put(f, at, 1, new), Expected(told, touched=frozenset({head}))


def _gathers(line: str) -> bool:
    """Whether the subject names several men: each is told for himself."""
    before = re.split(r" (?:is|runs|blocks|moves|at|says|covers|rushes|starts|aims) ", line)[0]
    return "," in before


def another_saying(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """A sentence more in one definition."""
    block = draw.choice(blocks(text, *_KINDS))
    f, start, _ = block
    facts = _facts(text, block)
    if not facts:
        return None
    new = f'    say "Drawn {draw.randrange(1000)}."'
    head = title(text.files[f][1][start])
    told = frozenset({(head, "", _said(new))})
    return text.put(f, facts[-1] + 1, 0, new), Expected(told, touched=frozenset({head}))


def no_sentence(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """A sentence less in one definition that has more than one line."""
    block = draw.choice(blocks(text, *_KINDS))
    f, start, _ = block
    lines = text.files[f][1]
    facts = _facts(text, block)
    said = [n for n in facts if re.match(r'    say "', lines[n])]
    if not said or len(facts) < 2:
        return None
    at = draw.choice(said)
    head = title(lines[start])
    told = frozenset({(head, _said(lines[at]), "")})
    return text.put(f, at, 1), Expected(told, touched=frozenset({head}))


def new_tag(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    f, start, end = draw.choice(blocks(text, "concept"))
    name = text.files[f][1][start].split(" extends ")[0].removeprefix("concept ").strip()
    head = f"tag Drawn {draw.choice('ABCDEFGH')} for {name}"
    if any(title(line) == head for _, _, line in text.lines()):
        return None
    return text.put(f, end, 0, head, '    say "Drawn."', ""), Expected(
        added=frozenset({head}), touched=frozenset({head})
    )


def another_name(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """A formation, motion, look or protection has another name, wherever it is used."""
    f, start, _ = draw.choice(blocks(text, "formation", "motion", "look", "protection"))
    kind, _, old = title(text.files[f][1][start]).partition(" ")
    new = "Zz" + draw.choice("abcdefgh") + str(draw.randrange(99))
    if old.startswith("Zz") or not _only_a_name(text, old):
        return None
    word = re.compile(rf"(?<![\w-]){re.escape(old)}(?![\w-])")

    def changed(line: str) -> str:
        parts = line.split('"')
        return '"'.join(p if n % 2 else word.sub(new, p) for n, p in enumerate(parts))

    told = frozenset({(f"{kind} {old}", new)})
    return text.each(changed), Expected(
        renamed=told, touched=frozenset({f"{kind} {old}", f"{kind} {new}"})
    )


def _only_a_name(text: Text, name: str) -> bool:
    """Whether no other name and no word of a line holds this one."""
    heads = [title(line) for _, _, line in text.lines() if line[:1].isalpha()]
    holding = [h for h in heads if re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", h)]
    word = re.compile(rf"^    (period|situation|scout|drop|move|wristband) .*{re.escape(name)}")
    other = any(re.search(word, line) for _, _, line in text.lines())  # a name of a week's own
    return len(holding) == 1 and name[0].isupper() and len(name) > 3 and not other


def another_order(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """The lines of a block in another order, blanks and a comment between: told where they are
    printed in their order, else nothing has changed."""
    block = draw.choice(blocks(text, "formation", "concept", "run", "look", "personnel"))
    f, start, _ = block
    facts = _facts(text, block)
    lines = text.files[f][1]
    if len(facts) < 2 or facts[-1] - facts[0] != len(facts) - 1:
        return None
    mixed = [lines[n] + "  " for n in facts]
    draw.shuffle(mixed)
    head = title(lines[start])
    was, now = (_printed(head, side) for side in ([lines[n] for n in facts], mixed))
    in_order = "{} in the order {}".format
    told = frozenset(
        (head, in_order(name, ", ".join(was[name])), in_order(name, ", ".join(now[name])))
        for name in was
        if was[name] != now[name]
    )
    new = ["// Drawn again.", *mixed]
    moved = text.put(f, facts[0], len(facts), *new[1:], "", "// Drawn.")
    return moved, Expected(told, touched=frozenset({head}) if told else frozenset())


def _printed(head: str, lines: Sequence[str]) -> dict[str, list[str]]:
    """What of a block is printed in the order of its lines, by what the lines are together."""
    found: dict[str, list[str]] = {}
    for line in map(str.strip, lines):
        if said := re.fullmatch(r'(?:(say|caution)|(.+) says) (".*")(?: when .*)?', line):
            label, man, words = said.groups()
            names = {"say": "what we say", "caution": "cautions"}
            for each in man.split(", ") if man else [""]:
                name = names[label] if label else f"what we tell {each}"
                found.setdefault(name, []).append(words)
        if key := re.fullmatch(r"key (.*?)", line):
            found.setdefault("keys", []).append(key[1])
        if keyed := re.fullmatch(r"\w+ ((?:gives|keeps) if .*)", line):
            found.setdefault("what is done off the keys", []).append(keyed[1])
        if typed := re.fullmatch(r"(give|pull|throw|pitch|claims|pair|kill) (.*?)\s*", line):
            label, words = typed.groups()
            name = next((key for key, those in _TYPED.items() if label in those), "claims")
            row = words if label == "claims" else f"{label} {words}"
            found.setdefault(name, []).append(row.replace(", ", " and "))
        stands = re.match(r"(\w+(?:, \w+)*) (?:is|at) ", line)
        if stands and head.split()[0] in ("personnel", "formation"):
            found.setdefault("the men", []).extend(stands[1].split(", "))
    return {name: [*dict.fromkeys(rows)] for name, rows in found.items()}


def rows_in_another_order(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """The calls under one heading of a week in another order."""
    found = blocks(text, "week")
    if not found:
        return None
    f, start, end = draw.choice(found)
    lines = text.files[f][1]
    lists = []
    for at in range(start + 1, end):
        rows = next(n for n in range(at + 1, end + 1) if n == end or lines[n][:8].strip())
        if re.match("    (openers|situation|scout|period)", lines[at]) and rows - at > 2:
            lists.append((at, list(lines[at + 1 : rows])))
    at, was = draw.choice(lists)
    now = draw.sample(was, len(was))
    names = [
        [re.split(", | when ", row.strip())[0] for row in side if row.strip()]
        for side in (was, now)
    ]
    if names[0] == names[1]:
        return None
    head = title(lines[start]).split(" from ")[0]
    before, after = (f"{lines[at].strip()} in the order {', '.join(side)}" for side in names)
    told = frozenset({(head, before, after)})
    return text.put(f, at + 1, len(was), *now), Expected(told, touched=frozenset({head}))


def other_files(text: Text, draw: random.Random) -> tuple[Text, Expected] | None:
    """The files in another order: nothing has changed."""
    files = list(text.files)
    draw.shuffle(files)
    return replace(text, files=tuple(files)), Expected()


EDITS: Sequence[Edit] = (
    another_number,
    another_number,
    another_number,
    another_saying,
    no_sentence,
    new_tag,
    another_name,
    another_order,
    rows_in_another_order,
    other_files,
)

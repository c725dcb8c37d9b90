"""What is done to a right text: by byte, word, figure, line, block, file, between playbooks."""

from __future__ import annotations

import re
from collections.abc import Callable
from random import Random

from .bases import BUNDLED, blocks_of, bundled, mistakes, small, words

Mutation = Callable[[Random, str], str]

FIGURES = (
    "0", "0.0", "00", "0.0000001", "0." + "0" * 320 + "1", "0.5", "1", "7", "12", "13", "25", "60",
    "99", "100", "169", "170", "179.99", "180", "180.01", "181", "1000000", "9" * 308, "9" * 309,
    "9" * 400, "1-0", "0-0", "5-5", "179-180", "1-" + "9" * 309, "#0", "#1", "#6", "#7", "#12",
    "#13", "#180", "#" + "9" * 309, "0x0", "1x9", "6x0", "99x99", "9" * 200 + "x1", "²", "½", "٣",
    "1e9", "-1", "−1", "1,5", "inf", "nan", "1_000", "0x1F", "1.", ".5", "1.5.5", "３", "Ⅷ",
)  # fmt: skip

ODD = (
    "\x00", "\x07", "\x08", "\x0b", "\x0c", "\r", "\x1b[31m", "\x1b]0;x\x07", "\x7f", "\x85",
    "\x9b", "\xa0", "\xad", "\u034f", "\u061c", "\u115f", "\u180e", "\u2000", "\u200b", "\u200c",
    "\u200d", "\u200e", "\u2028", "\u2029", "\u202e", "\u2066", "\u2060", "\u2800", "\u3000",
    "\u3164", "\ufeff", "\ufffd", "\ufffe", "\uffff", "\U000e0041", "\U0001f3c8", "\U0010ffff",
    "e\u0301", "\u0301" * 40, "ß", "İ", "ı", "ŉ", "ﬀ", "Σ", "ς", "ǅ", "א", "ع", "क", "ไ", "漢",
    "“", "”", "‘", "’", "–", "—", "−", "//", '"', "''", "\\", "%s", "{0}", "{name}", "$(x)",
    "<b>", "&amp;", "{{ 1 }}", "{% raw %}", "]]>", "\t",
)  # fmt: skip

MARKS = (
    ",", ">", "+", "then", "or", "when", "with", "on", "is", "at", "extends", "for", "in", "as",
    "motion", "above", "within", "of", "#", ":", ";", "=", "-", "(", "&", "@",
)  # fmt: skip

KINDS = (
    "playbook", "personnel", "formation", "motion", "route", "concept", "run", "tag", "look",
    "dress", "protection", "week",
)  # fmt: skip

GUARDS = (
    "zone", "man", "3x2", "2x2 or 3x1", "3 or more strong", "empty", "off, press", "middle", "3x1",
)  # fmt: skip


def _at(rng: Random, text: str) -> int:
    return rng.randint(0, len(text))


# Characters and bytes.


def odd_character(rng: Random, text: str) -> str:
    at = _at(rng, text)
    return text[:at] + rng.choice(ODD) + text[at:]


def odd_in_a_name(rng: Random, text: str) -> str:
    spots = [m.end() for m in re.finditer(r"^\w+ [\w\"]", text, re.MULTILINE)] or [0]
    at = rng.choice(spots)
    return text[:at] + rng.choice(ODD) + text[at:]


def odd_in_quotes(rng: Random, text: str) -> str:
    spots = [m.start() + 1 for m in re.finditer('"[^"\n]+"', text)] or [0]
    at = rng.choice(spots)
    return text[:at] + rng.choice(ODD) + text[at:]


def dropped_character(rng: Random, text: str) -> str:
    at = _at(rng, text)
    return text[:at] + text[at + rng.randint(1, 3) :]


def swapped_characters(rng: Random, text: str) -> str:
    at = _at(rng, text)
    return text[:at] + text[at : at + 2][::-1] + text[at + 2 :]


# Words and figures.


def _word(rng: Random, text: str, by: Callable[[str], str], what: str = r"[^\s,]+") -> str:
    found = list(re.finditer(what, text))
    if not found:
        return text
    word = rng.choice(found)
    return text[: word.start()] + by(word[0]) + text[word.end() :]


def other_word(rng: Random, text: str) -> str:
    return _word(rng, text, lambda _: rng.choice(words()))


def no_word(rng: Random, text: str) -> str:
    return _word(rng, text, lambda _: "")


def word_twice(rng: Random, text: str) -> str:
    times = rng.choice((2, 2, 2, 3, 40))
    return _word(rng, text, lambda word: " ".join([word] * times))


def misspelt(rng: Random, text: str) -> str:
    return _word(rng, text, lambda word: word[1:] + word[:1])


def other_case(rng: Random, text: str) -> str:
    return _word(rng, text, str.swapcase)


def quoted(rng: Random, text: str) -> str:
    return _word(rng, text, lambda word: f'"{word}"')


def mark(rng: Random, text: str) -> str:
    return _word(rng, text, lambda word: f"{word} {rng.choice(MARKS)}")


def mark_alone(rng: Random, text: str) -> str:
    return _word(rng, text, lambda _: rng.choice(MARKS))


def figure(rng: Random, text: str) -> str:
    return _word(rng, text, lambda _: rng.choice(FIGURES), r"#?\d[\d.x-]*")


def every_figure(rng: Random, text: str) -> str:
    share, said = rng.random(), rng.sample(FIGURES, 3)
    return re.sub(
        r"#?\d[\d.x-]*", lambda m: rng.choice(said) if rng.random() < share else m[0], text
    )


def figure_for_a_word(rng: Random, text: str) -> str:
    return _word(rng, text, lambda _: rng.choice(FIGURES))


# Lines.


def _lines(rng: Random, text: str, by: Callable[[list[str], int], object]) -> str:
    lines = text.split("\n")
    by(lines, rng.randrange(len(lines)))
    return "\n".join(lines)


def no_line(rng: Random, text: str) -> str:
    return _lines(rng, text, lambda lines, n: lines.pop(n))


def line_again(rng: Random, text: str) -> str:
    times = rng.choice((1, 1, 1, 5, 60))
    return _lines(rng, text, lambda lines, n: lines.__setitem__(slice(n, n), [lines[n]] * times))


def line_elsewhere(rng: Random, text: str) -> str:
    return _lines(
        rng, text, lambda lines, n: lines.insert(rng.randint(0, len(lines)), lines.pop(n))
    )


def other_margin(rng: Random, text: str) -> str:
    margin = rng.choice(("", " ", "  ", "\t", "        ", "\u00a0" * 4, "\u3000", "    \t"))
    return _lines(rng, text, lambda lines, n: lines.__setitem__(n, margin + lines[n].lstrip()))


def joined_lines(rng: Random, text: str) -> str:
    return _lines(
        rng, text, lambda lines, n: lines.__setitem__(slice(n, n + 2), [" ".join(lines[n : n + 2])])
    )


def cut_line(rng: Random, text: str) -> str:
    return _lines(rng, text, lambda lines, n: lines.__setitem__(n, lines[n][: _at(rng, lines[n])]))


def line_of_another(rng: Random, text: str) -> str:
    block = rng.choice(bundled(rng.choice(BUNDLED))).text.split("\n")
    return _lines(rng, text, lambda lines, n: lines.insert(n, rng.choice(block)))


def long_line(rng: Random, text: str) -> str:
    times = rng.choice((20, 100, 400))
    return _lines(rng, text, lambda lines, n: lines.__setitem__(n, lines[n] + ", a" * times))


def guarded(rng: Random, text: str) -> str:
    return _lines(
        rng, text, lambda lines, n: lines.__setitem__(n, f"{lines[n]} when {rng.choice(GUARDS)}")
    )


# Blocks.


def _blocks(rng: Random, text: str, by: Callable[[list[str], int], object]) -> str:
    parts = [block.text for block in blocks_of(text)] or [text]
    by(parts, rng.randrange(len(parts)))
    return "".join(parts)


def no_block(rng: Random, text: str) -> str:
    return _blocks(rng, text, lambda parts, n: parts.pop(n))


def block_again(rng: Random, text: str) -> str:
    return _blocks(rng, text, lambda parts, n: parts.insert(rng.randint(0, len(parts)), parts[n]))


def blocks_mixed(rng: Random, text: str) -> str:
    return _blocks(rng, text, lambda parts, _: rng.shuffle(parts))


def head_alone(rng: Random, text: str) -> str:
    return _blocks(rng, text, lambda parts, n: parts.__setitem__(n, parts[n].split("\n")[0] + "\n"))


def other_kind(rng: Random, text: str) -> str:
    return _blocks(
        rng,
        text,
        lambda parts, n: parts.__setitem__(n, re.sub(r"^\w+", rng.choice(KINDS), parts[n])),
    )


def extends_another(rng: Random, text: str) -> str:
    other = rng.choice([b.name for b in blocks_of(text)] or ["A"])

    def extend(parts: list[str], n: int) -> None:
        head, mark, rest = parts[n].partition("\n")
        parts[n] = f"{head} extends {other}{mark}{rest}"

    return _blocks(rng, text, extend)


def block_of_another(rng: Random, text: str) -> str:
    other = rng.choice(bundled(rng.choice(BUNDLED))).text
    return _blocks(rng, text, lambda parts, n: parts.insert(n, other))


def in_place_of_a_block(rng: Random, text: str) -> str:
    other = rng.choice(bundled(rng.choice(BUNDLED))).text
    return _blocks(rng, text, lambda parts, n: parts.__setitem__(n, other))


# Files.


def cut_off(rng: Random, text: str) -> str:
    return text[: _at(rng, text)]


def spliced(rng: Random, text: str) -> str:
    other = rng.choice((*small(), *mistakes()))
    return text[: _at(rng, text)] + other[_at(rng, other) :]


def unmerged(rng: Random, text: str) -> str:
    lines = text.split("\n")
    one, two, three = sorted(rng.randint(0, len(lines)) for _ in range(3))
    marks = ["<<<<<<< mine", "=======", ">>>>>>> theirs"]
    if rng.random() < 0.3:
        marks.pop(rng.randrange(3))
    for at, line in zip((three, two, one), reversed(marks), strict=False):
        lines.insert(at, line)
    return "\n".join(lines)


def line_ends(rng: Random, text: str) -> str:
    return text.replace("\n", rng.choice(("\r\n", "\r", "\n\n", "\n\r", "\x0b", "\u2028")))


def blanks(rng: Random, text: str) -> str:
    return text.replace(" ", rng.choice(("\u00a0", "\t", "  ", "", "\u2003", "\u200b")))


def all_in_one_case(rng: Random, text: str) -> str:
    return rng.choice((str.upper, str.lower, str.title))(text)


MUTATIONS: tuple[Mutation, ...] = (
    odd_character, odd_in_a_name, odd_in_quotes, dropped_character, swapped_characters,
    other_word, other_word, no_word, word_twice, misspelt, other_case, quoted, mark, mark_alone,
    figure, figure, figure, every_figure, figure_for_a_word,
    no_line, line_again, line_elsewhere, other_margin, joined_lines, cut_line, line_of_another,
    long_line, guarded,
    no_block, block_again, blocks_mixed, head_alone, other_kind, extends_another, block_of_another,
    in_place_of_a_block, cut_off, spliced, unmerged, line_ends, blanks, all_in_one_case,
)  # fmt: skip


def bytes_spoilt(rng: Random, raw: bytes) -> bytes:
    """Single bytes changed, put in or left out, so that the file need not be UTF-8."""
    spoilt = bytearray(raw)
    for _ in range(rng.randint(1, 4)):
        at = rng.randint(0, len(spoilt))
        match rng.randrange(3):
            case 0:
                spoilt[at:at] = bytes(rng.randrange(256) for _ in range(rng.randint(1, 3)))
            case 1:
                del spoilt[at : at + rng.randint(1, 8)]
            case _ if at < len(spoilt):
                spoilt[at] ^= 1 << rng.randrange(8)
    return bytes(spoilt)

"""Texts of up to a megabyte whose work may grow faster than they do."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from .bases import blocks_of, small

Flood = Callable[[Random, int], str]

MEGABYTE = 1_000_000
SIZES = (30, 400, 2000, 20_000, 100_000)


def _open() -> str:
    """A small playbook whose concept nobody has dressed up yet."""
    return "".join(b.text for b in blocks_of(small()[0]) if b.kind != "dress")


def _unlike(rng: Random, length: int) -> str:
    return "".join(rng.choice("abcdefghijklmnopqrstuvwxyz") for _ in range(length))


def chain(rng: Random, many: int) -> str:
    kind, line = rng.choice(
        (
            ("concept", "say a"),
            ("formation", "X at ball"),
            ("look", "say a"),
            ("route", "stroke up 5"),
        )
    )
    links = [f"{kind} A{n} extends A{n - 1}\n    {line}\n" for n in range(1, many)]
    if rng.random() < 0.5:
        links.reverse()
    return small()[0] + f"{kind} A0\n    {line}\n" + "".join(links)


def circle(rng: Random, many: int) -> str:
    kind = rng.choice(("concept", "formation", "look", "motion", "protection"))
    return small()[0] + "".join(
        f"{kind} A{n} extends A{(n + 1) % many}\n    say a\n" for n in range(many)
    )


def pairs(rng: Random, many: int) -> str:
    """Circles of two, as many as there is room for."""
    return small()[0] + "".join(f"concept A{n} extends A{n ^ 1}\n    say a\n" for n in range(many))


def one_line(rng: Random, many: int) -> str:
    text = small()[0]
    lines = text.split("\n")
    at = rng.randrange(len(lines))
    lines[at:at] = [lines[at]] * many
    return "\n".join(lines)


def junk(rng: Random, many: int) -> str:
    margin = rng.choice(("", "    "))
    return small()[0] + "".join(f"{margin}{_unlike(rng, 6)} )\n" for _ in range(many))


def strangers(rng: Random, many: int) -> str:
    """Lines of right form that name nobody."""
    head = rng.choice(("concept Sticky\n    ", "dress Stick\n    in "))
    tail = rng.choice((" runs go", " is back", ""))
    return _open() + head + "    ".join(f"{_unlike(rng, 8)}{tail}\n" for _ in range(many))


def near_names(rng: Random, many: int) -> str:
    """Many long names, nearly alike, and as many that miss them by a letter."""
    name = _unlike(rng, rng.choice((8, 40, 300)))
    return small()[0] + "".join(
        f"formation {name}{n}\n    X at ball\ntag a for {name}x{n}\n    say b\n"
        for n in range(many // 2)
    )


def one_block(rng: Random, many: int) -> str:
    line = rng.choice(
        ("a{} is back", "X at 1 outside ball when {}x1", "say {}", "a runs go when {}x2")
    )
    kind = rng.choice(("concept", "formation", "look", "run", "protection", "personnel"))
    return small()[0] + f"{kind} A\n" + "".join(f"    {line.format(n)}\n" for n in range(many))


def clashing(rng: Random, many: int) -> str:
    guards = (
        "zone",
        "man",
        "off",
        "press",
        "3x1",
        "2x2",
        "3 strong",
        "2 weak",
        "empty",
        "one back",
    )
    return (
        small()[0]
        + "concept A\n    a is back\n"
        + "".join(
            f"    a runs dig {n % 90} when {rng.choice(guards)} or {rng.choice(guards)}\n"
            for n in range(many)
        )
    )


def blocks(rng: Random, many: int) -> str:
    """As many right definitions of one kind."""
    text = small()[0]
    block = rng.choice([b for b in blocks_of(text) if b.kind not in ("playbook", "personnel")])
    head, _, rest = block.text.partition("\n")
    word, _, name = head.partition(" ")
    joined = " for " + name.split(" for ")[1] if " for " in name else ""
    return text + "".join(f"{word} B{n}{joined}\n{rest}" for n in range(many))


def tags(rng: Random, many: int) -> str:
    names = [f"T{n}" for n in range(many)]
    made = "".join(f"tag {name} for Stick\n    say {name}\n" for name in names)
    shown = "".join(f"    with {', '.join(names[n : n + 20])}\n" for n in range(0, many, 20))
    return _open() + made + "dress Stick\n    in Doubles, Trips\n    to right, left\n" + shown


def exceptions(rng: Random, many: int) -> str:
    return (
        _open()
        + "dress Stick\n"
        + "    in Doubles, Trips\n" * many
        + "    never in Trips to left\n" * many
    )


def nested(rng: Random, many: int) -> str:
    """One word's worth of tags and names that can be cut in many ways."""
    made = "".join(f"tag {' '.join(['a'] * n)} for Stick\n    say b\n" for n in range(1, 12))
    call = "Trips Right Stick " + " ".join(["a"] * min(many, rng.choice((12, 40, 400))))
    return _open() + made + f"dress Stick\n    in Trips\n    call {call} as Long\n"


def comments(rng: Random, many: int) -> str:
    return small()[0] + '// "“" // \n' * many


def quotes(rng: Random, many: int) -> str:
    line = rng.choice(('"', '"" ', '“"', '"a" // '))
    return small()[0] + "concept A\n" + f"    say {line * 100}\n" * (many // 20)


def odd(rng: Random, many: int) -> str:
    char = rng.choice("\x0b\u200b\u202e\x1b")
    return small()[0] + f"concept {char}A\n    say b\n" * many


def unmerged(rng: Random, many: int) -> str:
    return small()[0] + "<<<<<<< a\nconcept A\n=======\nconcept B\n>>>>>>> b\n" * many


FLOODS: tuple[Flood, ...] = (
    chain, circle, pairs, one_line, junk, strangers, near_names, one_block, clashing, blocks, tags,
    exceptions, nested, comments, quotes, odd, unmerged,
)  # fmt: skip


def flood(rng: Random, sort: Flood, many: int = 0) -> str:
    """A flood of ``many`` pieces, or of some number of them; at most a megabyte."""
    text = sort(rng, many or rng.choice(SIZES))
    return text if len(text) <= MEGABYTE else text[: text.rfind("\n", 0, MEGABYTE) + 1]

"""Whatever file the page for contributors names is there."""

from __future__ import annotations

import re
from pathlib import Path

from test_developers_examples import new_files

HOUSE = Path(__file__).parent.parent
PAGE = (HOUSE / "DEVELOPERS.md").read_text("utf-8")
ENDINGS = "py|md|lark|toml|jinja|css|svg"
CHANGES = PAGE[PAGE.index("## Changes") : PAGE.index("## A picture, step by step")]


def named(words: str) -> set[str]:
    """Files and folders in the code words of a text; a part of a path counts as it stands."""
    found = re.findall(rf"`([\w./-]+(?:\.(?:{ENDINGS})|/))(?:`|:)", words)
    return {name.rstrip("/") for name in found}


def there(name: str) -> bool:
    rooms = (HOUSE, *(HOUSE / each for each in ("compiler", "tests", "themes", "grammar")))
    return any((room / name).exists() for room in rooms) or any(
        path.match(f"*/{name}") for room in rooms[1:] for path in room.rglob(Path(name).name)
    )


def test_every_file_that_is_named_is_there() -> None:
    names = named(PAGE.replace(CHANGES, ""))
    assert len(names) > 100
    assert {name for name in names if not there(name)} - new_files() == set()


def test_a_link_leads_to_a_heading() -> None:
    heads = re.findall(r"^#+ (.+)$", PAGE, re.MULTILINE)
    slugs = {re.sub(r"[^\w -]", "", head.lower()).replace(" ", "-") for head in heads}
    links = set(re.findall(r"\]\(#([^)]*)\)", PAGE))
    assert links
    assert links <= slugs


def test_decisions_are_numbered_in_order() -> None:
    for letter in "NH":
        numbers = [int(n) for n in re.findall(rf"^- \*\*{letter}(\d+)\*\*", PAGE, re.MULTILINE)]
        assert numbers == list(range(1, len(numbers) + 1))
        assert numbers

"""A concept that became two, two that became one, and a change that nothing is laid to."""

from __future__ import annotations

import re
from pathlib import Path

from stemline.compare.as_data import plain_data
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.told import told
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source

STARTER = Path(__file__).parents[2] / "grammar" / "starter"


def test_what_is_split_off_or_joined_is_told_with_what_it_is_alike() -> None:
    one = read_files(STARTER).sources
    quick = next(source for source in one if "concept Stick\n" in source.text)
    found = re.search(r"^concept Stick\n(?:(?: .*)?\n)*", quick.text, re.MULTILINE)
    assert found is not None
    more = found[0].replace("concept Stick", "concept Prod").replace("stick 6", "stick 7")
    assert "stick 7" in more
    two = tuple(
        Source(s.name, s.text + ("\n" + more if s is quick else "")) for s in one
    )  # fmt: skip
    apart, together = _compared(one, two), _compared(two, one)
    split, joined = ([line.text for line in told(found)] for found in (apart, together))
    assert any(line.startswith("New: concept Prod, out of Stick (") for line in split), split
    assert any(line.startswith("Gone: concept Prod, now in Stick (") for line in joined), joined
    for each in (apart, together):
        kin = {d["now"] or d["before"]: d["kin"] for d in plain_data(each)["definitions"]}
        assert kin["concept Prod"]["name"] == "Stick" and kin["concept Prod"]["likeness"] >= 0.5


def test_a_number_and_a_forty_are_told_and_no_call_is_laid_to_them() -> None:
    """Not even one that another line changed; a man who is somebody else is another thing."""
    one = read_files(STARTER / "high-school").sources
    for new, moves in (("H is slot, 11, forty 4.8", False), ("H is wideout", True)):
        two = _edited(one, ("    H is slot\n", f"    {new}\n"), ("runs stick 6", "runs stick 8"))
        found = _compared(one, two)
        calls = {change.one.title: change.calls for change in found.definitions}
        assert calls["concept Stick"] and bool(calls["personnel Base"]) == moves


def _edited(texts: tuple[Source, ...], *edits: tuple[str, str]) -> tuple[Source, ...]:
    made = []
    for source in texts:
        text = source.text
        for was, now in edits:
            text = text.replace(was, now)
        made.append(Source(source.name, text))
    return tuple(made)


def _compared(old: tuple[Source, ...], new: tuple[Source, ...]) -> Comparison:
    return compared(Session(old, "a"), Session(new, "b"))

"""Files' names: readable, portable, bounded, no two alike, the same every time."""

from __future__ import annotations

import random
import re
import string

from hypothesis import given
from hypothesis import strategies as st

from stemline.outside.file_names import LONGEST, file_name, file_names

PORTABLE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
DEVICES = {"con", "prn", "aux", "nul", "com1", "lpt9"}
"""Microsoft, "Naming Files, Paths, and Namespaces": names that open a device and no file."""

WORDS = st.one_of(
    st.text(max_size=400),
    st.text("aA bB-'!é\u0301ßñ", max_size=12),
    st.sampled_from(["NUL", "con", "Com1", "!!!", "", "Call", "...", "a" * 300, "../x", "C:\\x"]),
)


@given(st.lists(WORDS, max_size=12))
def test_names_are_portable_and_no_two_alike(names: list[str]) -> None:
    given_ = file_names(names)
    assert set(given_) == set(names)
    assert len(set(given_.values())) == len(given_)
    for name in given_.values():
        assert PORTABLE.fullmatch(name), name
        assert len(name) <= LONGEST + 65
        assert name not in DEVICES


@given(st.lists(WORDS, max_size=12), st.randoms(use_true_random=False))
def test_order_does_not_matter(names: list[str], shuffler: random.Random) -> None:
    others = names[:]
    shuffler.shuffle(others)
    assert file_names(others) == file_names(names)


@given(st.lists(st.text(string.ascii_letters + " ", min_size=1, max_size=9), max_size=9), WORDS)
def test_alone_is_as_among_others_where_nobody_is_like_it(names: list[str], name: str) -> None:
    among = file_names([name, *names])
    if len({*among.values(), file_name(name)}) == len(among):
        assert among[name] == file_name(name) or file_name(name).startswith(among[name])


def test_a_plain_call_keeps_its_words() -> None:
    assert file_names(["Three Two Right Crossers"]) == {
        "Three Two Right Crossers": "three-two-right-crossers"
    }


def test_names_that_read_alike_are_told_apart_and_the_plain_one_keeps_its_own() -> None:
    plain, loud, hyphen = "Doubles Right Stick", "Doubles Right Stick!", "Doubles Right-Stick"
    named = file_names([loud, plain, hyphen])
    assert named[plain] == "doubles-right-stick"
    assert re.fullmatch(r"doubles-right-stick-[0-9a-f]{6}", named[loud])
    assert named[loud] != named[hyphen]


def test_names_that_differ_by_case_only_are_told_apart() -> None:
    named = file_names(["Doubles Right Stick", "Doubles right stick"])
    assert all(re.fullmatch(r"doubles-right-stick-[0-9a-f]{6}", n) for n in named.values())


def test_nothing_to_say_devices_and_long_names() -> None:
    named = file_names(["!!!", "NUL", "x" * 300])
    assert re.fullmatch(r"call-[0-9a-f]{6}", named["!!!"])
    assert named["NUL"] == "nul-call"
    assert named["x" * 300] == "x" * LONGEST
    assert file_names(["Été"]) == {"Été": "ete"}

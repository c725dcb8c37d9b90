"""The page of messages: a section for every code, and samples that do what the page says."""

from __future__ import annotations

import re
import tempfile
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

import pytest
from corpus.mixing import base, compile_case
from errors_page import doubted_only, generated, told_once
from together import together

from stemline.checks.discovered import wordings
from stemline.theme import read_theme

PAGE = files("stemline.grammar").joinpath("errors.md").read_text("utf-8")

THEMES = "Themes"
NO_SAMPLE = {*(f"E{n}" for n in range(101, 110)), "E111", "E603", "E604", "E905", "E907"} | {
    "E605", "E606", "W101", "W102", "W103", "E130", "E131", "E132",
    "W104", *(f"E{n}" for n in range(140, 146)), *(f"E{n}" for n in range(911, 919)),
    *(f"E{n}" for n in range(951, 961)),
    "E976", "E989", "W990", "E996", "W996", "E997",
} | doubted_only()  # fmt: skip
"""Said of folders, files and commands, of a text that fits on no page, or of a rule that no text
shows in doubt."""

_FENCE = re.compile(r"^```(?:play|toml) *(.*)\n((?:.*\n)*?)```$", re.MULTILINE)


@dataclass(frozen=True)
class Sample:
    """A fenced text and the words behind its fence."""

    words: tuple[str, ...]
    text: str
    is_theme: bool

    def codes(self) -> list[str]:
        if self.is_theme:
            with tempfile.TemporaryDirectory() as folder:
                (Path(folder) / "theme.toml").write_text(self.text, "utf-8")
                return [d.code for d in read_theme(Path(folder), "sample").diagnostics]
        alone, clock = "alone" in self.words, "clock" in self.words
        return compile_case("sample.play", self.text, alone=alone, clock=clock).codes


@dataclass(frozen=True)
class Section:
    """One code's part of the page."""

    group: str
    code: str
    title: str
    body: str

    @property
    def samples(self) -> list[Sample]:
        return [
            Sample(tuple(m[1].split()), m[2], self.group == THEMES)
            for m in _FENCE.finditer(self.body)
        ]

    @property
    def prose(self) -> str:
        return " ".join(_FENCE.sub("", self.body).split())


def sections() -> list[Section]:
    found = []
    for group in re.split(r"^## ", PAGE, flags=re.MULTILINE)[1:]:
        title, _, text = group.partition("\n")
        for part in re.split(r"^### ", text, flags=re.MULTILINE)[1:]:
            head, _, body = part.partition("\n")
            code, _, name = head.partition(" ")
            found.append(Section(title, code, name, body))
    return found


SECTIONS = sections()
SAMPLED = [s for s in SECTIONS if s.code not in NO_SAMPLE]


def test_what_the_checks_say_of_themselves_stands_on_the_page() -> None:
    assert generated(PAGE) == PAGE, "write it anew: python -m tests.errors_page"


def test_a_section_that_is_new_stands_behind_the_number_before_it() -> None:
    without = re.sub(r"### W520 .*?(?=^### )", "", PAGE, flags=re.DOTALL | re.MULTILINE)
    assert without.count("### ") == PAGE.count("### ") - 1
    assert generated(without) == PAGE


def test_a_code_that_is_no_more_has_no_section() -> None:
    assert generated(PAGE.replace("### E521 ", "### E529 no more\n\nGone.\n\n### E521 ")) == PAGE


def test_every_code_has_its_section_and_none_is_left_over() -> None:
    wanted = sorted((code, worded.title) for code, worded in wordings().items())
    assert sorted((s.code, s.title) for s in SECTIONS) == wanted


@together("section", SECTIONS, ids=lambda s: s.code)
def test_a_section_says_why_and_shows_a_wrong_and_a_right_text(section: Section) -> None:
    assert 20 < len(section.prose) < 400
    assert ("No sample: " in section.prose) == (section.code in NO_SAMPLE)
    heads = [tuple(w for w in s.words if w != "clock")[:2] for s in section.samples]
    if section.code in NO_SAMPLE:
        assert heads == []
    else:
        assert [h[:1] for h in heads] in ([("fail",), ()], [("fail",), ("alone",)])
        assert heads[0] == ("fail", section.code)


@together("section", SAMPLED, ids=lambda s: s.code)
def test_the_wrong_sample_gives_its_code_and_no_other(section: Section) -> None:
    assert set(section.samples[0].codes()) == {section.code}


@together("section", SAMPLED, ids=lambda s: s.code)
def test_the_mended_sample_gives_no_diagnostic(section: Section) -> None:
    assert section.samples[1].codes() == []


def test_the_small_playbook_on_the_page_is_the_one_the_samples_stand_in() -> None:
    (shown,) = _FENCE.findall(PAGE.partition("## The small playbook")[2])
    assert shown == ("", "\n".join(source.text for source in base()))


def test_a_code_that_two_checks_tell_is_refused() -> None:
    assert told_once([("E540", "a"), ("E541", "b")]) == {"E540": "a", "E541": "b"}
    with pytest.raises(SystemExit, match="E540 is told by two checks"):
        told_once([("E540", "a"), ("E541", "b"), ("E540", "c")])

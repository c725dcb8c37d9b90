"""Processes that work beside the one that asks: how they end with it."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from multiprocessing import current_process
from pathlib import Path

import pytest

from stemline.emit.side_by_side import SideBySide

PROGRAM = """
import sys, time
from collections import Counter
from stemline.emit.side_by_side import SideBySide
if __name__ == "__main__":
    works = SideBySide(Counter)
    works.number = 2
    try:
        print("begun", flush=True)
        list(works.each("most_common", [1] * 4))
        time.sleep(60)
    except KeyboardInterrupt:
        works.end()
        sys.exit(130)
"""


@pytest.mark.skipif(not hasattr(signal, "pthread_sigmask"), reason="no signal can be held back")
@pytest.mark.parametrize("seconds", [0.1, 0.25, 0.4])
def test_who_is_being_started_says_nothing_of_an_interrupt(tmp_path: Path, seconds: float) -> None:
    """As a terminal sends it: to all at once, while Python itself is not yet up in the others."""
    (tmp_path / "program.py").write_text(PROGRAM, "utf-8")
    with subprocess.Popen(
        [sys.executable, str(tmp_path / "program.py")], start_new_session=True, text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    ) as child:  # fmt: skip
        assert child.stdout is not None
        child.stdout.readline()
        time.sleep(seconds)
        os.killpg(child.pid, signal.SIGINT)
        _, said = child.communicate(timeout=60)
    assert (child.returncode, said) == (130, "")


def test_who_asks_works_too_and_every_answer_has_its_place() -> None:
    works = SideBySide(current_process)
    works.number = 2
    try:
        made = list(works.each("__getattribute__", ["pid", "daemon"] * 4))
    finally:
        works.end()
    assert len(made) == 8
    assert os.getpid() in made[::2] and len({*made[::2]}) == 2
    assert all(type(each) is bool for each in made[1::2])

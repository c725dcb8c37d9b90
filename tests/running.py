"""A command run in this process, as a coach types it."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner, Result

from stemline.commands import main


def run(*args: str | Path) -> Result:
    return CliRunner().invoke(main, [str(a) for a in args])

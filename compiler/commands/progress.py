"""A progress bar, for commands that draw many pictures."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from stemline.printing.model import Progress


@contextmanager
def progress() -> Iterator[Progress]:
    """A bar on a terminal, told how many are done of how many; silence elsewhere."""
    if not sys.stderr.isatty():
        yield lambda done, of: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, TextColumn
    from rich.progress import Progress as Bar

    columns = TextColumn("drawing"), BarColumn(), MofNCompleteColumn()
    with Bar(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("drawing", total=None)

        def told(done: int, of: int) -> None:
            bar.update(task, completed=done, total=of)

        yield told

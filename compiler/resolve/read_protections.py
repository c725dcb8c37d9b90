"""Protection blocks: who slides, who blocks man, who scans, what is hot."""

from __future__ import annotations

from stemline.diagnostics.model import Diagnostic
from stemline.resolve.definitions import Settings
from stemline.resolve.names import Blocks
from stemline.resolve.run_definitions import Protection
from stemline.syntax.tree import Block


def read_protection(
    block: Block, blocks: Blocks, settings: Settings
) -> tuple[Protection, tuple[Diagnostic, ...]]:
    """The protection of a block, with what is wrong in it."""
    return Protection(block.name.text, (), block.name.span, blocks.is_broken(block)), ()

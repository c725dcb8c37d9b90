"""Look blocks: fronts by technique, the second level and secondary by rule, duties, rushes."""

from __future__ import annotations

from stemline.diagnostics.model import Diagnostic
from stemline.resolve.definitions import Settings
from stemline.resolve.look_definitions import LookDef
from stemline.resolve.names import Blocks
from stemline.syntax.tree import Block


def read_look(
    block: Block, blocks: Blocks, settings: Settings
) -> tuple[LookDef, tuple[Diagnostic, ...]]:
    """The look of a block, with what is wrong in it."""
    return LookDef(block.name.text, (), block.name.span, blocks.is_broken(block)), ()

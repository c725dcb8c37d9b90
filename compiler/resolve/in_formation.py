"""A concept's lines where one formation is called: those that ask for another never hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from stemline.football.conditions import Guard
from stemline.playbook.concepts import Body


def called_in(body: Body, formation: str) -> Body:
    """``body`` for calls from a formation, by its key; the same body where no line asks for one."""
    changed = {}
    for each in fields(body):
        value = getattr(body, each.name)
        told = _told(value, formation)
        if told is not value:
            changed[each.name] = told
    return replace(body, **changed) if changed else body


def _told(value: Any, formation: str) -> Any:
    """A value whose guards are for the formation; the very same where nothing in it changes."""
    if isinstance(value, Mapping):
        pairs = {key: _told(one, formation) for key, one in value.items()}
        return pairs if any(pairs[key] is not value[key] for key in pairs) else value
    if isinstance(value, tuple):
        told = tuple(_told(one, formation) for one in value)
        return told if any(a is not b for a, b in zip(told, value, strict=True)) else value
    guard = getattr(value, "guard", None) if is_dataclass(value) else None
    if not isinstance(guard, Guard):
        return value
    held = guard.called_in(formation)
    return value if held is guard else replace(value, guard=held)

"""A comparison as JSON, by the schema `compare-schema.json` beside this file."""

from __future__ import annotations

import json
from typing import Any

from stemline.compare.comparison import CallChange, Comparison, DefinitionChange
from stemline.compare.definitions import SaidLine
from stemline.compare.teaching import teaching
from stemline.describe.changes import man_changed

VERSION = 1
"""Of the shape of the data: a new one where a field goes or means another thing."""


def as_text(found: Comparison) -> str:
    return json.dumps(plain_data(found), ensure_ascii=False, indent=1) + "\n"


def plain_data(found: Comparison) -> dict[str, Any]:
    """The comparison as plain values."""
    return {
        "version": VERSION,
        "old": found.old,
        "new": found.new,
        "same": found.is_same,
        "calls": {
            "same": found.same,
            "changed": [_call(c) for c in found.changed],
            "new": [play.call.spoken for play in found.added],
            "gone": [play.call.spoken for play in found.dropped],
            "renamed": [{"before": a, "now": b} for a, b in found.renamed],
        },
        "definitions": [_definition(change) for change in found.definitions],
        "follows": [
            {"came": row.came, "code": row.code, "text": row.text, "calls": list(row.calls)}
            for row in found.follows
        ],
        "families": [
            {"name": f.name, "same": f.same, "changed": f.changed, "new": f.new, "gone": f.gone}
            for f in found.families
        ],
        "teaching": [
            {"man": row.man, "new": _jobs(row.new), "gone": _jobs(row.gone)}
            for row in teaching(found)
        ],
    }


def _definition(change: DefinitionChange) -> dict[str, Any]:
    return {
        "kind": change.one.kind,
        "before": change.was.title if change.was is not None else None,
        "now": change.now.title if change.now is not None else None,
        "likeness": round(change.likeness, 3) if change.likeness is not None else None,
        "kin": _kin(change),
        "roles": [{"before": a, "now": b} for a, b in change.roles],
        "lines": [{"before": _line(c.was), "now": _line(c.now)} for c in change.lines],
        "calls": list(change.calls),
    }


def _kin(change: DefinitionChange) -> dict[str, Any] | None:
    """What one that is new was split from, or one that is gone has gone into."""
    if change.kin is None:
        return None
    name, score = change.kin
    return {"name": name, "likeness": round(score, 3)}


def _line(line: SaidLine | None) -> str | None:
    return line.text if line is not None else None


def _call(change: CallChange) -> dict[str, Any]:
    said = []
    if change.was is not None and change.now is not None:
        said = [man_changed(man, change.now, change.was) for man in change.men]
    return {
        "before": change.before,
        "now": change.spoken,
        "possible": change.now is not None,
        "men": [man.label for man in change.men],
        "said": [line for line in said if line],
        "orders": [{"what": what, "before": was, "now": now} for what, was, now in change.orders],
    }


def _jobs(rows: tuple[tuple[str, str], ...]) -> list[dict[str, str]]:
    return [{"concept": concept, "job": job} for concept, job in rows]

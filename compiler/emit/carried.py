"""Values as bytes, to be carried to a process of ours that was just started."""

from __future__ import annotations

import io
import pickle
from copyreg import dispatch_table
from types import MappingProxyType
from typing import Any


def carried(values: object) -> bytes:
    """The values as bytes. A view of a table, which nobody can write to, goes as a copy of it."""
    held = io.BytesIO()
    pickler = pickle.Pickler(held, pickle.HIGHEST_PROTOCOL)
    pickler.dispatch_table = {
        **dispatch_table,
        MappingProxyType: lambda view: (_view, (dict(view),)),
    }
    pickler.dump(values)
    return held.getvalue()


def _view(table: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(table)

"""Values, guards and men on the field: codes 400 to 599."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {}

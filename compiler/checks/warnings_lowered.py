"""Does the playbook lower warnings, and nothing but warnings?

A coach who has seen a warning and means what he wrote may have it counted in one line instead of
printed. A code is named, one by one: nothing lowers all of them, and nothing lowers an error.

Example: ``lower all``. Write instead the codes that are printed: ``lower W650, W710``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.discovered import wordings
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.nearest import nearest
from stemline.playbook.playbook import Settings

_WARNING = "W"


class E320(Mistake):
    title = "unknown warning to lower"
    message = "`{found}` is not the code of a warning, so it cannot be lowered"
    label = "no such warning"
    help = "name each warning by the code that it is printed with: `lower W650, W710`"

    found: str


class E321(Mistake):
    title = "an error is not lowered"
    message = "{found} is an error, and only warnings can be lowered"
    label = "an error"
    help = "take it out, and mend what the error points at"

    found: str


WHEN = When.WRITTEN


def check_warnings_lowered(settings: Settings) -> Iterator[Diagnostic]:
    warnings = [code for code in wordings() if code.startswith(_WARNING)]
    for text, span in settings.lowered:
        code = text.upper()
        if code in wordings() and code not in warnings:
            yield E321(found=code).at(span)
        elif code not in warnings:
            yield E320(found=text).at(span, nearest=nearest(code, warnings))


def lowered(settings: Settings) -> tuple[str, ...]:
    """The codes that are lowered, in their order, each once."""
    named = (text.upper() for text, _ in settings.lowered)
    return tuple(dict.fromkeys(c for c in named if c.startswith(_WARNING) and c in wordings()))


SAMPLES = """
### E320

A lowered warning is counted and not printed, so it is named by its own code. Nothing lowers all of
them at once.

```play fail E320
playbook Saltmarsh Herons
    code canadian amateur
    lower all
```

```play
playbook Saltmarsh Herons
    code canadian amateur
    lower W650
```

### E321

An error is a play that cannot be drawn or may not be played. No line of the book makes it right.

```play fail E321
playbook Saltmarsh Herons
    code canadian amateur
    lower E510
```

```play
playbook Saltmarsh Herons
    code canadian amateur
```
"""

"""Does the playbook lower warnings, and nothing but warnings?

A coach who has seen a warning and means what he wrote may have it counted in one line instead of
printed. Each is named, by what it says or by its code: nothing lowers all of them, and nothing
lowers an error.

Example: ``lower all``. Write instead what is meant: ``lower man without a job``.
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
    message = "`{found}` is no warning, so it cannot be lowered"
    label = "no such warning"
    help = "name each by its title or its code: `lower man without a job`, `lower W650`"

    found: str


class E321(Mistake):
    title = "an error is not lowered"
    message = "{found} is an error, and only warnings can be lowered"
    label = "an error"
    help = "take it out, and mend what the error points at"

    found: str


WHEN = When.WRITTEN


def check_warnings_lowered(settings: Settings) -> Iterator[Diagnostic]:
    known = _named()
    warnings = [name for name, code in known.items() if code.startswith(_WARNING)]
    for text, span in settings.lowered:
        code = known.get(_plain(text), "")
        if not code:
            title = nearest(_plain(text), warnings) if " " in text else ()
            near = title or nearest(text.upper(), warnings)
            yield E320(found=text).at(span, nearest=near)
        elif not code.startswith(_WARNING):
            yield E321(found=code).at(span)


def lowered(settings: Settings) -> tuple[str, ...]:
    """The codes that are lowered, in their order, each once."""
    known = _named()
    named = (known.get(_plain(text), "") for text, _ in settings.lowered)
    return tuple(dict.fromkeys(c for c in named if c.startswith(_WARNING)))


def _named() -> dict[str, str]:
    """Every code by what it may be named with: itself, or its title on the page of messages."""
    worded = wordings()
    return {_plain(worded[code].title): code for code in worded} | {code: code for code in worded}


def _plain(text: str) -> str:
    """A title without its first article and the doubt at its end; a code as it is printed."""
    if text.upper() in wordings():
        return text.upper()
    words = text.casefold().removesuffix(", perhaps").split()
    return " ".join(words[1:] if words[:1] and words[0] in ("a", "an", "the") else words)


SAMPLES = """
### E320

A lowered warning is counted and not printed, so each is named, by its title or its code. Nothing
lowers all of them at once.

```play fail E320
playbook Saltmarsh Herons
    code canadian amateur
    lower all
```

```play
playbook Saltmarsh Herons
    code canadian amateur
    lower man without a job
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

"""What went wrong, as data: no sentence is built here."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.source import Span


@dataclass(frozen=True)
class Related:
    """A second place that explains the first; ``label`` stands under it in the print-out."""

    span: Span
    label: str


@dataclass(frozen=True)
class Diagnostic:
    """One mistake.

    ``code`` is stable and names an entry of the catalogue, which holds the wording;
    ``values`` fill the wording's fields; ``nearest`` are the right names closest to what
    was written, best first.
    """

    code: str
    span: Span
    values: tuple[tuple[str, str], ...] = ()
    nearest: tuple[str, ...] = ()
    related: tuple[Related, ...] = ()

    @property
    def is_error(self) -> bool:
        return self.code.startswith("E")


def diagnose(
    code: str,
    span: Span,
    *,
    nearest: tuple[str, ...] = (),
    related: tuple[Related, ...] = (),
    **values: object,
) -> Diagnostic:
    """A diagnostic from keyword values, kept in sorted order so that equal mistakes are equal."""
    return Diagnostic(
        code, span, tuple(sorted((k, str(v)) for k, v in values.items())), nearest, related
    )

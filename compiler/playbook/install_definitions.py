"""An install as the coach wrote it: what each day puts in, by names that are still texts."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.source import Span


@dataclass(frozen=True)
class InstallItem:
    """A name of a row. ``owner`` is the concept that a tag is for ("" for anything else); ``again``
    tells that it is taught once more."""

    text: str
    span: Span
    owner: str = ""
    owner_span: Span | None = None
    again: bool = False


@dataclass(frozen=True)
class InstallStep:
    """A day of the camp, or with ``weekly`` the practices of a week; ``date`` is "" where none is
    said."""

    number: int
    weekly: bool
    date: str
    items: tuple[InstallItem, ...]
    span: Span

    @property
    def title(self) -> str:
        return f"{'week' if self.weekly else 'day'} {self.number}"

    @property
    def when(self) -> str:
        return f"{'in' if self.weekly else 'on'} {self.title}"


@dataclass(frozen=True)
class InstallDef:
    """The install of a season: its steps in the order of the text, and the coach's own words."""

    name: str
    steps: tuple[InstallStep, ...]
    says: tuple[str, ...]
    span: Span
    broken: bool

"""What went wrong, as data: a code and what it carries, and where that was."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from inspect import get_annotations
from string import Formatter
from typing import ClassVar, NoReturn, Self, dataclass_transform

from stemline.diagnostics.in_words import together
from stemline.source import Span


@dataclass(frozen=True)
class Wording:
    """How one code is said: its name in a few words, and three texts that may hold ``{fields}``."""

    title: str
    message: str
    label: str = ""
    help: str = ""


@dataclass(frozen=True)
class Related:
    """A second place that explains the first; ``label`` stands under it in the print-out."""

    span: Span
    label: str


@dataclass_transform(kw_only_default=True, frozen_default=True)
class Mistake:
    """One mistake without its place. A subclass is a row of the catalogue, named as it is printed.

    Its annotations are the fields that it carries: a constructor that forgets one, or has one too
    many, does not type-check. ``title`` names the mistake in a few words and never changes with the
    case; ``message`` says what is wrong, ``label`` stands under the marked text, ``help`` says what
    to write instead. All three may hold ``{fields}``, which are words by then: a figure is rounded
    where the mistake is found. Lower case, no full stop at the end. Raises TypeError for a row
    that asks more of a field.
    """

    title: ClassVar[str] = ""
    message: ClassVar[str] = ""
    label: ClassVar[str] = ""
    help: ClassVar[str] = ""
    varies: ClassVar[tuple[str, ...]] = ("call",)
    """Fields that change with the ball's spot or the called side and are no cause of their own:
    of calls that are counted together the first case stands for all."""
    listed: ClassVar[str] = ""
    """A field of several names: of calls that are counted together all of them are named."""
    only_commas: ClassVar[bool] = False
    """Whether a field of several names is said without "and". They are the same in any order."""
    fields: ClassVar[tuple[str, ...]] = ()
    """The names of what it carries, sorted."""

    def __init_subclass__(cls) -> None:
        own = (
            name for name, kind in get_annotations(cls).items() if not kind.startswith("ClassVar")
        )
        cls.fields = tuple(sorted({*cls.fields, *own}))
        if "varies" in cls.__dict__:
            cls.varies = tuple(dict.fromkeys(("call", *cls.varies)))
        for text in (cls.message, cls.label, cls.help):
            for _, field, how, _ in Formatter().parse(text):
                if how:
                    raise TypeError(f"{cls.__name__} wants {{{field}:{how}}}: a field is words")

    def __init__(self, **values: object) -> None:
        if values.keys() != set(self.fields):
            raise TypeError(f"{type(self).__name__} carries {self.fields}, not {tuple(values)}")
        self.__dict__.update(values)

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"{type(self).__name__} is frozen")

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and self.__dict__ == other.__dict__

    def __hash__(self) -> int:
        return hash((type(self), self.values))

    def __repr__(self) -> str:
        return f"{self.code}({', '.join(f'{name}={value!r}' for name, value in self.values)})"

    @property
    def code(self) -> str:
        """As it is printed; E for an error, W for a warning."""
        return type(self).__name__

    @classmethod
    def worded(cls) -> dict[str, Wording]:
        """How it is said, by the codes that it is printed with."""
        return {cls.__name__: Wording(cls.title, cls.message, cls.label, cls.help)}

    @property
    def wording(self) -> Wording:
        return self.worded()[self.code]

    @property
    def values(self) -> tuple[tuple[str, str], ...]:
        """What fills the wording, by name."""
        return tuple((name, self._text(self.__dict__[name])) for name in self.fields)

    def _text(self, value: object) -> str:
        if isinstance(value, tuple):
            return ", ".join(value) if self.only_commas else together(value)
        return str(value)

    @property
    def cause(self) -> tuple[object, ...]:
        """The same for mistakes that one thing in the text causes in several calls."""
        own = ((n, self.__dict__[n]) for n in self.fields if n not in self.varies)
        return self.code, *((n, tuple(sorted(v)) if isinstance(v, tuple) else v) for n, v in own)

    def having(self, **values: object) -> Self:
        """The same mistake with other values in some of its fields."""
        return type(self)(**{**self.__dict__, **values})

    def silences(self, other: Mistake) -> bool:
        """Whether it tells the cause of ``other``, found in the same call, which then is not
        said."""
        return False

    def at(
        self, span: Span, *, nearest: Iterable[str] = (), related: Iterable[Related] = ()
    ) -> Diagnostic:
        """The mistake at its place in the text."""
        return Diagnostic(self, span, tuple(nearest), tuple(related))


@dataclass(frozen=True)
class Diagnostic:
    """One mistake: what it is and what it carries, where, and the right names closest to what was
    written, best first."""

    said: Mistake
    span: Span
    nearest: tuple[str, ...] = ()
    related: tuple[Related, ...] = ()

    @property
    def code(self) -> str:
        """The code that it is printed with; stable."""
        return self.said.code

    @property
    def values(self) -> tuple[tuple[str, str], ...]:
        """What fills its wording, by name: equal mistakes are sorted alike by it."""
        return self.said.values

    @property
    def message(self) -> str:
        """What is wrong, in a sentence without its place."""
        return self.said.wording.message.format_map(dict(self.values))

    @property
    def is_error(self) -> bool:
        return self.code.startswith("E")

"""The house's `dataclass` against that of the standard library."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pickle
import pkgutil
from collections.abc import Callable
from dataclasses import field
from typing import Any, ClassVar

import pytest

import stemline
from stemline import values


def _kinds(dataclass: Callable[..., Any]) -> dict[str, Any]:
    """The same classes, made by one decorator or the other."""

    @dataclass(frozen=True)
    class Point:
        x: float
        y: float = 0.0
        near: ClassVar[int] = 3

    @dataclass(frozen=True)
    class Named(Point):
        name: str = "one"
        seen: int = field(default=0, compare=False, repr=False)

    class Plain(Named):
        """Says nothing of its own."""

    @dataclass(frozen=True, order=True)
    class Ordered:
        line: int
        column: int = 1

    @dataclass(frozen=True, kw_only=True)
    class ByName:
        who: str
        parts: list[int] = field(default_factory=list)

        def __post_init__(self) -> None:
            if not self.who:
                raise ValueError("nobody")

    @dataclass(frozen=True, eq=False)
    class Alone:
        n: int

    @dataclass(frozen=True)
    class Own:
        n: int
        m: int = 0

        def __eq__(self, other: object) -> bool:
            return isinstance(other, Own) and self.n == other.n

    @dataclass
    class Open:
        n: int
        men: dict[str, int] = field(default_factory=dict)

    @dataclass(frozen=True)
    class Nothing:
        pass

    return {kind.__name__: kind for kind in (
        Point, Named, Plain, Ordered, ByName, Alone, Own, Open, Nothing
    )}  # fmt: skip


OURS, THEIRS = _kinds(values.dataclass), _kinds(dataclasses.dataclass)


def _said(kinds: dict[str, Any], ask: Callable[[dict[str, Any]], object]) -> str:
    try:
        return repr(ask(kinds))
    except Exception as error:
        return f"{type(error).__name__}: {error}"


def _placed(point: Any) -> object:
    match point:
        case point.__class__(x, y):
            return x, y
    return None


def _wanted(kind: type) -> object:
    wanted = inspect.signature(kind).parameters.values()
    return [(each.name, each.kind, each.annotation) for each in wanted]


ASKED: list[Callable[[dict[str, Any]], object]] = [
    lambda k: k["Plain"](1, 2),
    lambda k: k["Named"](1, name="two", seen=4),
    lambda k: k["Named"](1, seen=1) == k["Named"](1, seen=2),
    lambda k: k["Named"](1) == k["Plain"](1),
    lambda k: k["Point"](1) != k["Point"](2),
    lambda k: hash(k["Named"](1, seen=1)) == hash(k["Named"](1, seen=2)) == hash((1, 0.0, "one")),
    lambda k: k["Point"](),
    lambda k: k["Point"](1, 2, 3),
    lambda k: setattr(k["Point"](1), "x", 2),
    lambda k: delattr(k["Named"](1), "x"),
    lambda k: dataclasses.replace(k["Named"](1), y=5),
    lambda k: [each.name for each in dataclasses.fields(k["Plain"])],
    lambda k: (k["Point"].y, k["Point"].near, dataclasses.is_dataclass(k["Own"])),
    lambda k: _placed(k["Plain"](3, 4)),
    lambda k: sorted([k["Ordered"](2), k["Ordered"](1, 5), k["Ordered"](1)]),
    lambda k: k["Ordered"](1) <= k["Point"](1),
    lambda k: k["ByName"]("x"),
    lambda k: k["ByName"](who="x").parts is k["ByName"](who="x").parts,
    lambda k: k["ByName"](who=""),
    lambda k: k["Alone"](1) == k["Alone"](1),
    lambda k: len({k["Alone"](1), k["Alone"](1)}),
    lambda k: k["Own"](1, 2) == k["Own"](1, 3),
    lambda k: hash(k["Own"](1, 2)) == hash((1, 2)),
    lambda k: hash(k["Open"](1)),
    lambda k: (k["Open"](1), k["Open"](1).men is k["Open"](1).men),
    lambda k: dataclasses.asdict(k["Open"](1, {"H": 2})),
    lambda k: (k["Nothing"](), k["Nothing"]() == k["Nothing"]()),
    lambda k: dataclasses.astuple(object.__new__(k["Nothing"])),
    lambda k: [(name, _wanted(kind)) for name, kind in k.items()],
]


@pytest.mark.parametrize("number", range(len(ASKED)))
def test_every_answer_is_that_of_the_standard_library(number: int) -> None:
    assert _said(OURS, ASKED[number]) == _said(THEIRS, ASKED[number])


def test_a_value_of_which_nothing_was_written_can_be_copied_and_compared() -> None:
    kept = pickle.dumps(Kept(1, "x"))
    for fresh in (_kinds(values.dataclass)["Point"], _kinds(values.dataclass)["Named"]):
        held = object.__new__(fresh)
        vars(held).update(x=1, y=2, name="n", seen=0)
        assert held == held and hash(held) == hash(held)
        assert dataclasses.replace(held, x=3).x == 3
    assert pickle.loads(kept) == Kept(1, "x")


@values.dataclass(frozen=True)
class Kept:
    n: int
    name: str


def test_no_class_of_the_house_is_refused() -> None:
    for found in pkgutil.walk_packages(stemline.__path__, "stemline."):
        if found.name != "stemline.__main__":
            importlib.import_module(found.name)
    kinds = [kind for kind in values._HOW if kind.__module__.startswith("stemline.")]
    assert len(kinds) > 400
    for kind in kinds:
        assert dataclasses.is_dataclass(kind)
        for name in values._LATER:
            assert not isinstance(getattr(kind, name, None), values._Later), (kind, name)

"""The plays of a plan's calls, each made when somebody first wants it: a check wants none."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from stemline.football.play import Play
from stemline.resolve.order import Order


class PlaysWhenAsked(Mapping[str, Play]):
    """Plays by their calls. ``make`` gives that of a call that is known to be right."""

    def __init__(self, orders: Mapping[str, Order], make: Callable[[Order], Play | None]) -> None:
        self._orders = orders
        self._make = make
        self._made: dict[str, Play] = {}

    def __getitem__(self, call: str) -> Play:
        if call not in self._made:
            play = self._make(self._orders[call])
            assert play is not None, "a plan has calls that are right"
            self._made[call] = play
        return self._made[call]

    def __iter__(self) -> Iterator[str]:
        return iter(self._orders)

    def __len__(self) -> int:
        return len(self._orders)

    def __reduce__(self) -> tuple[object, ...]:
        """For another process, which has no maker of plays: all of them."""
        return dict, (dict(self),)

"""Is everything put in before it is called on?

A tag is taught on its concept, and a call on its formation, motion and protection: taught the other
way round, men learn an exception to a rule they do not know. Common practice; that a day takes some
three to five new things is common practice too, and printed, not checked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake, Related
from stemline.diagnostics.in_words import either, together
from stemline.diagnostics.nearest import nearest
from stemline.playbook.install_definitions import InstallDef, InstallItem, InstallStep
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.call_reading import readings
from stemline.resolve.installing import Schedule, Taught, TaughtPart, parts_of, tag_part
from stemline.resolve.order import Order


class E730(Mistake):
    title = "nothing that can be put in"
    message = "`{found}` is nothing that this playbook teaches"
    label = "not known"
    help = (
        "name a formation, motion, protection, concept or run, a tag with `for` its concept, or a "
        "whole call"
    )

    found: str


class E731(Mistake):
    title = "a tag before its concept"
    message = "`{tag}` is put in {step}, and {concept} {when}"
    label = "an exception to what they do not know yet"
    help = "put the concept in first, on the same day or before it"

    tag: str
    step: str
    concept: str
    when: str


class E732(Mistake):
    title = "a call before what it is made of"
    message = "`{call}` needs {parts}, not put in by {step}"
    label = "not to be run yet"
    help = "put these in first, on the same day or before it"

    call: str
    parts: str
    step: str


class E733(Mistake):
    title = "taught again before it was taught"
    message = "`{found}` is taught again {step}, and {when}"
    label = "not put in yet"
    help = "name it without `again` on the day that puts it in"

    found: str
    step: str
    when: str


class E734(Mistake):
    title = "a day out of its order"
    message = "{step} stands after {before}"
    label = "too late"
    help = "days count up, and weeks after them: write them in the order in which they come"

    step: str
    before: str


class E736(Mistake):
    title = "a tag without its concept"
    message = "`{found}` is a tag, of {concepts}"
    label = "which one?"
    help = "say whose: {found} for {first}"

    found: str
    concepts: str
    first: str


class W730(Mistake):
    title = "put in twice"
    message = "`{found}` is put in {step}, and was {before}"
    help = "say `again` where it is taught once more"

    found: str
    step: str
    before: str


def scheduled(
    book: Playbook, calls: Mapping[str, Order]
) -> tuple[Schedule | None, tuple[Diagnostic, ...]]:
    """The playbook's install and what is wrong with it; None where it has none or an error.
    ``calls`` are the book's by how they are spoken."""
    if book.install is None:
        return None, ()
    working = _Working(book, calls, book.install)
    working.work()
    broken = book.install.broken or any(d.is_error for d in working.found)
    return None if broken else working.schedule(), tuple(working.found)


WHEN = When.TAUGHT


def check_installs(book: Playbook, calls: Calls) -> Iterator[Diagnostic]:
    """Names, order and what each thing is taught on."""
    yield from scheduled(book, calls.by_name)[1]


@dataclass
class _Working:
    book: Playbook
    calls: Mapping[str, Order]
    install: InstallDef
    found: list[Diagnostic] = field(default_factory=list)
    steps: list[Taught] = field(default_factory=list)
    since: dict[TaughtPart, int] = field(default_factory=dict)
    again: list[tuple[InstallItem, TaughtPart, int]] = field(default_factory=list)
    tags: list[tuple[InstallItem, TaughtPart, int]] = field(default_factory=list)
    asked: list[tuple[InstallItem, Order, int]] = field(default_factory=list)

    def schedule(self) -> Schedule:
        return Schedule(tuple(self.steps), self.since)

    def work(self) -> None:
        self._check_order()
        for place, step in enumerate(self.install.steps):
            new: dict[TaughtPart, None] = {}
            for item, part in [(i, p) for i in step.items for p in self._parts(i, place)]:
                if item.again:
                    self.again.append((item, part, place))
                elif part in self.since:
                    self._twice(part, item, step)
                else:
                    self.since[part] = place
                    new[part] = None
                    if part.kind == "tag":
                        self.tags.append((item, part, place))
            again = dict.fromkeys(part for _, part, at in self.again if at == place)
            self.steps.append(Taught(step, tuple(new), tuple(again)))
        self._check_again()
        self._check_tags()
        self._check_calls()

    def _title(self, place: int) -> str:
        return self.install.steps[place].title

    def _when(self, place: int) -> str:
        return self.install.steps[place].when

    def _twice(self, part: TaughtPart, item: InstallItem, step: InstallStep) -> None:
        before = self.install.steps[self.since[part]].when
        if before != step.when:
            self.found.append(W730(found=part.name, step=step.when, before=before).at(item.span))

    def _check_order(self) -> None:
        before: InstallStep | None = None
        for step in self.install.steps:
            if before is not None and (step.weekly, step.number) <= (before.weekly, before.number):
                first = (Related(before.span, f"{before.title} is here"),)
                said = E734(step=step.title, before=before.title)
                self.found.append(said.at(step.span, related=first))
            before = step

    # Names.

    def _parts(self, item: InstallItem, place: int) -> tuple[TaughtPart, ...]:
        """What a name means; a whole call puts nothing in, and is asked for its parts later."""
        if item.owner:
            return self._owned(item)
        known = self._named(item.text)
        if known:
            return known
        orders = [o for n, o in self.calls.items() if n.casefold() == _key(item.text)]
        orders = orders or list(readings(self.book, item.text, item.span))
        if orders and not item.again:
            self.asked.append((item, orders[0], place))
            return ()
        owners = [c for c, key in self.book.tags if key == _key(item.text)]
        if owners:
            names = [self.book.concepts[c].name for c in owners]
            said = E736(found=item.text, concepts=either(names), first=names[0])
            self.found.append(said.at(item.span))
            return ()
        near = nearest(item.text, [n for table in self._tables().values() for n in table.values()])
        self.found.append(E730(found=item.text).at(item.span, nearest=near))
        return ()

    def _owned(self, item: InstallItem) -> tuple[TaughtPart, ...]:
        """A tag of the concept behind `for`."""
        owner, at = _key(item.owner), item.owner_span or item.span
        if owner not in self.book.concepts:
            near = nearest(item.owner, [c.name for c in self.book.concepts.values()])
            self.found.append(E730(found=item.owner).at(at, nearest=near))
            return ()
        if (owner, _key(item.text)) in self.book.tags:
            return (tag_part(self.book, owner, _key(item.text)),)
        own = [tag.name for (concept, _), tag in self.book.tags.items() if concept == owner]
        near = nearest(item.text, own)
        said = E730(found=f"{item.text} for {self.book.concepts[owner].name}")
        self.found.append(said.at(item.span, nearest=near))
        return ()

    def _named(self, text: str) -> tuple[TaughtPart, ...]:
        """Everything of that name but tags; a kind before it says which."""
        kind, _, rest = _key(text).partition(" ")
        tables = self._tables()
        meant = "concept" if kind == "run" else kind
        if meant in tables and rest in tables[meant]:
            return (TaughtPart(meant, (rest,), tables[meant][rest]),)
        key = _key(text)
        return tuple(
            TaughtPart(k, (key,), table[key]) for k, table in tables.items() if key in table
        )

    def _tables(self) -> dict[str, dict[str, str]]:
        book = self.book
        return {
            "formation": {key: each.name for key, each in book.formations.items()},
            "motion": {key: each.name for key, each in book.motions.items()},
            "protection": {key: each.name for key, each in book.protections.items()},
            "concept": {key: each.name for key, each in book.concepts.items()},
        }

    # What is taught on what.

    def _check_again(self) -> None:
        for item, part, place in self.again:
            since = self.since.get(part)
            if since is None or since > place:
                when = "no day puts it in" if since is None else f"{self._title(since)} puts it in"
                said = E733(found=part.name, step=self._when(place), when=when)
                self.found.append(said.at(item.span))

    def _check_tags(self) -> None:
        for item, part, place in self.tags:
            key = part.key[0]
            concept = TaughtPart("concept", (key,), self.book.concepts[key].name)
            since = self.since.get(concept)
            if since is None or since > place:
                when = "never" if since is None else self._when(since)
                said = E731(tag=item.text, step=self._when(place), concept=concept.name, when=when)
                self.found.append(said.at(item.span))

    def _check_calls(self) -> None:
        for item, order, place in self.asked:
            parts = parts_of(self.book, order)
            lacking = [p for p in parts if self.since.get(p, place + 1) > place]
            if lacking:
                named = together([f"{part.kind} {part.name}" for part in lacking])
                said = E732(call=item.text, parts=named, step=self._title(place))
                self.found.append(said.at(item.span))


def _key(text: str) -> str:
    return " ".join(text.split()).casefold()


SAMPLES = """
### E730

A name in the install is a name of the playbook. What is misspelt would be taught by nobody.

```play fail E730
install Camp
    day 1
        Three Two, Crosers
```

```play
install Camp
    day 1
        Three Two, Crossers
```

### E731

A tag changes a concept. Men who do not know the concept learn the change as the rule.

```play fail E731
like E736
-        Three Two, Crossers, Wheel
+        Three Two
+        Wheel for Crossers
+    day 2
+        Crossers
```

```play
like E731
-        Three Two
+        Three Two, Crossers
+    day 2
-    day 2
-        Crossers
```

### E732

A whole call may be named on the day on which it is to be run: its formation, motion, concept, tags
and protection have to be in by then.

```play fail E732
install Camp
    day 1
        Crossers
        Three Two Right Crossers
```

```play
install Camp
    day 1
        Three Two, Crossers
        Three Two Right Crossers
```

### E733

What is taught again has been taught. A slip here hides that no day puts it in at all.

```play fail E733
like W730
-        Three Two, Crossers
+        Three Two
+        again Crossers
```

```play
install Camp
    day 1
        Three Two, Crossers
    day 2
        again Crossers
```

### E734

Days count up, and the weeks of the season come after the days of the camp.

```play fail E734
install Camp
    day 2
        Three Two
    day 1
        Crossers
```

```play
install Camp
    day 1
        Three Two
    day 2
        Crossers
```

### E736

Several concepts may have a tag of one name, and each is taught by itself.

```play fail E736
tag Wheel for Crossers
    flat runs wheel away from settle
    keeps read, feet

install Camp
    day 1
        Three Two, Crossers, Wheel
```

```play
like E731 mended
-    day 2
```

### W730

Two first days for one thing: the second staff meeting thinks that it is new, and plans its time so.

```play fail W730
like E733 mended
-        again Crossers
+        Crossers
```

```play
like E733 mended
```
"""

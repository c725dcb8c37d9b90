"""The plain data: as the published schema says, by a validator of others."""

from __future__ import annotations

import copy
import json
from importlib.resources import files

import jsonschema
import pytest

from stemline.week.plain_data import data_files, week_json

from .plans import HERONS, LANTERNS, bundled_week

SCHEMA_TEXT = json.loads(files("stemline.grammar").joinpath("week.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA_TEXT)


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA_TEXT)


@pytest.mark.parametrize(("name", "number"), [(HERONS, 5), (HERONS, 6), (LANTERNS, 1)])
def test_a_week_is_as_the_schema_says(name: str, number: int) -> None:
    week = bundled_week(name, number)
    data = json.loads(data_files(week)["week.json"])
    assert list(VALIDATOR.iter_errors(data)) == []
    assert data == week_json(week)
    assert len(data["plays"]) == len(week.entries)
    parts = ("game_plan", "install", "positions", "quizzes", "counting")
    assert all(data[part] for part in parts)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda d: d.pop("sheet"),
        lambda d: d.update(extra=1),
        lambda d: d["index"][0].update(number="7"),
        lambda d: d["plays"][0]["men"][0].update(snap=[0.0]),
        lambda d: d["script"][0].update(contact="hard"),
        lambda d: d["game_plan"]["calls"][0].update(number="7"),
        lambda d: d["game_plan"]["looks"][0].pop("leaves"),
        lambda d: d["install"]["days"][0].update(callable=-1),
        lambda d: d["install"]["calls"][0].update(since=None),
        lambda d: d["positions"][0]["jobs"][0].update(calls=[]),
        lambda d: d["quizzes"][0]["questions"][0].pop("job"),
        lambda d: d["counting"]["groups"][0]["leanings"][0].update(rows=0),
    ],
)
def test_a_spoiled_one_is_not(spoil: object) -> None:
    data = copy.deepcopy(week_json(bundled_week(HERONS, 5)))
    assert callable(spoil)
    spoil(data)
    assert list(VALIDATOR.iter_errors(json.loads(json.dumps(data))))


def test_the_same_week_gives_the_same_bytes() -> None:
    week = bundled_week(HERONS, 5)
    assert data_files(week) == data_files(week)

"""A sentence with its form and values."""

from __future__ import annotations

import copy
import json
import pickle

import numpy as np
import pytest

from evenkelvin.said import Figure, Said, chosen, counted, joined, listed, with_forms


def test_it_is_its_plain_text() -> None:
    said = Said("{name} loses {stops:.1f} stops", name="key", stops=1.25)
    assert said == "key loses 1.2 stops"
    assert json.dumps([said]) == '["key loses 1.2 stops"]'
    assert said.form == "{name} loses {stops} stops"
    assert said.plain() == {
        "said": "{name} loses {stops} stops",
        "with": {"name": "key", "stops": {"number": "1.2"}},
    }


def test_values_may_be_said_themselves_and_numbers_of_any_kind() -> None:
    inner = Said("light {n}", n=np.int64(2))
    said = Said("{who}: {level}", who=inner, level=Figure("1,500"))
    assert said == "light 2: 1,500"
    assert said.plain()["with"] == {
        "who": {"said": "light {n}", "with": {"n": {"number": "2"}}},
        "level": {"number": "1,500"},
    }
    assert Said("{x:g}", x=np.float64(0.25)).plain()["with"] == {"x": {"number": "0.25"}}


def test_what_people_wrote_is_never_read_as_a_form() -> None:
    said = Said("{name} holds.", name="{name} {0} {x:d}")
    assert said == "{name} {0} {x:d} holds."
    assert said.plain()["with"] == {"name": "{name} {0} {x:d}"}


def test_lists_and_numbers_of_things() -> None:
    assert joined(["a", "b", "c"]) == "a, b, c"
    assert listed(["a"]) == "a"
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert chosen(["a", "b"]) == "a or b"
    assert counted(1, "{n} roll", "{n} rolls") == "1 roll"
    assert counted(0, "{n} roll of {size}", "{n} rolls of {size}", size="x").form == (
        "{n} rolls of {size}"
    )


def test_a_missing_value_is_noticed_at_once() -> None:
    with pytest.raises(KeyError):
        Said("{name} is missing.")


def test_copies_keep_form_and_values() -> None:
    said = Said("{a} and {b}", a="{", b=Said("two"))
    for copied in (copy.copy(said), copy.deepcopy(said), pickle.loads(pickle.dumps(said))):
        assert copied == said
        assert copied.plain() == said.plain()


def test_an_answer_with_forms_keeps_everything_else() -> None:
    answer = {"words": [Said("two"), "own"], "x": 1.5, "data": {"said": "theirs"}, "none": None}
    assert with_forms(answer) == {
        "words": [{"said": "two"}, "own"],
        "x": 1.5,
        "data": {"said": None, "plain": {"said": "theirs"}},
        "none": None,
    }

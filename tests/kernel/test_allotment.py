"""The shared-stock search against trying everything."""

from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.lights.allotment import Options, allot
from examples import examples


def _random(rng, lights, whites, goods, most, each=(1,)):
    options = []
    for _ in range(lights):
        rows = []
        for white in range(whites):
            rows.append((white, 1, 0, int(rng.integers(0, 3)), (-1, -1, -1)))
            for _ in range(int(rng.integers(0, most + 1))):
                pieces = int(rng.integers(0, 4))
                takes = tuple(rng.integers(0, goods, pieces)) + (-1,) * (3 - pieces)
                rows.append((white, 0, pieces, int(rng.integers(-20, 200)), takes))
        columns = [np.array(column) for column in zip(*rows, strict=True)]
        options.append(Options(*columns[:4], columns[4], int(rng.choice(each))))
    return options


def everything(options, whites, stock):
    """Return the cheapest cost by most out and most pieces, by trying every combination."""
    lights = len(options)
    most = sum(int(one.pieces.max()) for one in options)
    table = np.full((lights + 1, most + 1), np.inf)
    for white in range(whites):
        rows = [np.nonzero(one.white == white)[0] for one in options]
        for choice in product(*rows):
            used = np.zeros(len(stock) + 1, dtype=int)
            for one, row in zip(options, choice, strict=True):
                np.add.at(used, one.takes[row], one.each)
            if np.any(used[: len(stock)] > stock):
                continue
            out = sum(int(one.out[row]) for one, row in zip(options, choice, strict=True))
            pieces = sum(int(one.pieces[row]) for one, row in zip(options, choice, strict=True))
            cost = sum(int(one.cost[row]) for one, row in zip(options, choice, strict=True))
            table[out, pieces] = min(table[out, pieces], cost)
    return np.minimum.accumulate(np.minimum.accumulate(table, axis=1), axis=0)


def _valid(found, options, stock):
    for k, row in enumerate(found.plans):
        for p, plan in enumerate(row):
            if plan is None:
                assert np.isinf(found.cost[k, p])
                continue
            assert plan.out <= k
            assert plan.pieces <= p
            used = np.zeros(len(stock) + 1, dtype=int)
            sums = np.zeros(3, dtype=int)
            for one, row_index in zip(options, plan.choice, strict=True):
                assert one.white[row_index] == plan.white
                np.add.at(used, one.takes[row_index], one.each)
                sums += [one.out[row_index], one.pieces[row_index], one.cost[row_index]]
            assert np.all(used[: len(stock)] <= stock)
            assert tuple(sums) == (plan.out, plan.pieces, plan.cost)
            assert plan.cost == found.cost[k, p]


@pytest.mark.parametrize("seed", range(60))
def test_every_cell_is_the_cheapest_of_all_combinations(seed):
    rng = np.random.default_rng(seed)
    goods = int(rng.integers(1, 6))
    options = _random(rng, int(rng.integers(1, 5)), 3, goods, 6, (1, 1, 2, 3))
    stock = rng.integers(0, 4, goods)
    found = allot(options, 3, stock)
    assert np.array_equal(found.cost, everything(options, 3, stock))
    assert np.array_equal(found.cost, found.at_least)
    _valid(found, options, stock)


@settings(max_examples=examples(60), deadline=None)
@given(seed=st.integers(0, 2**32 - 1), carried=st.integers(1, 12))
def test_with_too_little_room_plans_stay_possible_and_the_bound_stays_true(seed, carried):
    rng = np.random.default_rng(seed)
    goods = int(rng.integers(1, 4))
    options = _random(rng, 4, 2, goods, 5)
    stock = rng.integers(0, 3, goods)
    found = allot(options, 2, stock, carried=(carried,))
    best = everything(options, 2, stock)
    _valid(found, options, stock)
    assert np.all(found.at_least <= best)
    assert np.all(found.cost >= best)


def test_a_good_of_which_there_is_plenty_is_not_reckoned_with():
    rng = np.random.default_rng(5)
    options = _random(rng, 5, 2, 3, 6)
    free = allot(options, 2, np.full(3, 10**6))
    ample = allot(options, 2, np.full(3, 15))
    assert np.array_equal(free.cost, ample.cost)
    assert np.array_equal(free.cost, free.at_least)


@pytest.mark.parametrize("seed", range(6))
def test_on_larger_sets_more_room_only_closes_the_gap(seed):
    rng = np.random.default_rng(seed)
    options = _random(rng, 9, 4, 8, 10)
    stock = rng.integers(0, 3, 8)
    small, large = (allot(options, 4, stock, carried=(room,)) for room in (20, 20_000))
    _valid(small, options, stock)
    _valid(large, options, stock)
    assert np.all(large.cost <= small.cost)
    assert np.all(small.at_least <= large.cost)
    assert np.all(small.at_least <= large.at_least)

"""Leftovers for blocks: the optimum against trying everything, rules kept one by one, what is missing."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from random import Random

import pytest

from wedgework.yarn.scraps import Found, Nothing, Shortage, Task, assign, cost_of, least_ends, shortage


def task(needs: list[int], stocks: list[int], **more: object) -> Task:
    """No rule but the lengths, unless said otherwise."""
    count, many = len(needs), len(stocks)
    plain = Task(
        tuple(needs), tuple(stocks), tuple(tuple(range(many)) for _ in needs), tuple(range(count)), (),
        tuple((True,) * many for _ in stocks), (0,) * many, many, (False, *((True,) * (count - 1))),
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


def allowed(one: Task, leftovers: tuple[int, ...], *, short: bool = False) -> bool:
    """All the rules, said once more and without any search."""
    used = [0] * len(one.stocks)
    for need, leftover in zip(one.needs, leftovers, strict=True):
        used[leftover] += need
    areas: dict[int, int] = {}
    return (
        (short or all(u <= s for u, s in zip(used, one.stocks, strict=True)))
        and all(leftover in may for leftover, may in zip(leftovers, one.may, strict=True))
        and all(areas.setdefault(area, leftover) == leftover for area, leftover in zip(one.areas, leftovers, strict=True))
        and all(
            (leftovers[i] == leftovers[k] and same) or (leftovers[i] != leftovers[k] and one.distinct[leftovers[i]][leftovers[k]])
            for i, k, same in one.beside
        )
        and len({one.kinds[leftover] for leftover in leftovers}) <= one.most_kinds
    )


def missing(one: Task, leftovers: tuple[int, ...]) -> int:
    return sum(
        max(sum(n for n, x in zip(one.needs, leftovers, strict=True) if x == leftover) - stock, 0)
        for leftover, stock in enumerate(one.stocks)
    )


def some_task(seed: int) -> Task:
    random = Random(seed)
    count, many = random.randint(2, 6), random.randint(2, 4)
    pairs = [(i, k) for k in range(count) for i in range(k) if random.random() < 0.4]
    alike = {(a, b) for a in range(many) for b in range(a) if random.random() < 0.2}
    needs = [random.randint(5, 30) for _ in range(count)]
    return task(
        needs,
        [random.randint(10, 20 + sum(needs) * 2 // many) for _ in range(many)],
        may=tuple(tuple(sorted(random.sample(range(many), random.choice([1, many, many])))) for _ in range(count)),
        areas=tuple(random.choice([i, i, i, max(i - 2, 0)]) for i in range(count)),
        beside=tuple((i, k, random.random() < 0.5) for i, k in pairs),
        distinct=tuple(tuple(a != b and (max(a, b), min(a, b)) not in alike for b in range(many)) for a in range(many)),
        kinds=tuple(random.randint(0, 2) for _ in range(many)),
        most_kinds=random.randint(1, 3),
        carried=(False, *(random.random() < 0.6 for _ in range(count - 1))),
    )


@pytest.mark.parametrize("seed", range(120))
def test_the_optimum_is_that_of_trying_everything(seed: int) -> None:
    one = some_task(seed)
    every = [a for a in product(range(len(one.stocks)), repeat=len(one.needs)) if allowed(one, a)]
    found = assign(one)
    if not every:
        assert found == Nothing(True)
        return
    assert isinstance(found, Found)
    assert allowed(one, found.leftovers)
    assert found.proved
    assert found.cost == sum(cost_of(one, found.leftovers)) == min(sum(cost_of(one, a)) for a in every)
    assert least_ends(one)[0] <= min(cost_of(one, a)[0] for a in every)


@pytest.mark.parametrize("seed", range(120))
def test_the_shortage_is_the_least_there_is(seed: int) -> None:
    one = some_task(seed)
    every = [a for a in product(range(len(one.stocks)), repeat=len(one.needs)) if allowed(one, a, short=True)]
    found = shortage(one)
    if not every:
        assert found is None
        return
    assert isinstance(found, Shortage)
    assert found.proved
    assert allowed(one, found.leftovers, short=True)
    assert sum(found.missing) == missing(one, found.leftovers) == min(missing(one, a) for a in every)


def test_both_kinds_of_tasks_were_tried() -> None:
    """Else the comparison above would prove little."""
    found = [assign(some_task(seed)) for seed in range(120)]
    assert 20 < sum(isinstance(one, Nothing) for one in found) < 100


def test_one_leftover_in_a_row_has_two_ends() -> None:
    found = assign(task([10, 10, 10], [40, 40]))
    assert isinstance(found, Found)
    assert (found.leftovers, found.ends) == ((0, 0, 0), 2)


def test_none_runs_out_inside_a_block() -> None:
    """30 and 10 of one, 25 of the other: the 25 block fits only there."""
    found = assign(task([30, 25, 10], [40, 25]))
    assert isinstance(found, Found)
    assert found.leftovers == (0, 1, 0)
    assert assign(task([30, 25, 11], [40, 25])) == Nothing(True)


def test_a_large_piece_has_a_bound() -> None:
    random = Random(3)
    count, many = 120, 14
    needs = [random.randint(300, 900) for _ in range(count)]
    one = task(
        needs, [sum(needs) * 12 // 10 // many] * many,
        kinds=tuple(i % 3 for i in range(many)),
        beside=tuple((i, i + 1, False) for i in range(count - 1)),
        distinct=tuple(tuple(abs(a - b) > 1 for b in range(many)) for a in range(many)),
        carried=(False, *(random.random() < 0.3 for _ in range(count - 1))),
    )  # fmt: skip
    found = assign(one)
    assert isinstance(found, Found)
    assert allowed(one, found.leftovers)
    assert found.bound <= found.cost
    assert found.proved == (found.bound == found.cost)

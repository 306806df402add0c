"""Ask everything in every way: nothing may raise, and the answer is always JSON without NaN.

As a script:  python tests/kernel/fuzz_asks.py [requests an ask] [seed] [ask …]
A bounded part of it runs with the other tests.

Requests are made from what each ask declares of its fields, and from its golden questions: sound
ones, nearly sound ones (a field changed, dropped or added) and hostile ones.
"""

from __future__ import annotations

import json
import math
import sys
import time
import traceback
from collections import Counter
from collections.abc import Mapping
from copy import deepcopy
from importlib import import_module
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st

sys.path += [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "kernel")]

import answer_shapes

HERE = Path(__file__).parent
#: Longest list and largest group that are drawn.
_MOST_ITEMS = 3
_EXTREME = (
    0, -0.0, 1, -1, 5e-324, 1e-310, 1e-200, 1e-9, 1e200, 1e307, 1.7e308, -1.7e308, 2**53, 10**40,
    10**400, math.nan, math.inf, -math.inf,
)  # fmt: skip
_TEXTS = (
    "", " ", "key", "0", "-0", "1e999", "1e-320", "1,500", "0,401", "½", "1/0", "1/1e-320", "nan",
    "4' 6\"", "\ud800", "\x00", "‮x", "9" * 400, "a" * 3000, "__proto__", "full CTO", "٣",
)  # fmt: skip
HOSTILE = st.recursive(
    st.one_of(
        st.sampled_from(_EXTREME), st.sampled_from(_TEXTS), st.none(), st.booleans(),
        st.integers(), st.floats(), st.text(max_size=12),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.dictionaries(
            st.sampled_from(("x", "y", "cct_K", "thing", "values", "id", "said", "of")), inner,
            max_size=3,
        ),
    ),
    max_leaves=5,
)  # fmt: skip


def _books() -> list[Any]:
    demo = json.loads((HERE.parents[1] / "demo_readings" / "night_ferry.json").read_text("utf-8"))
    small = demo | {"entries": demo["entries"][:12]}
    small.pop("sha256", None)
    small.pop("count", None)
    return [small, {"format": demo["format"], "version": demo["version"], "entries": []}]


def strategy(shape: Any) -> Any:
    """Return a strategy of what a declared field can hold."""
    from evenkelvin import shapes

    match shape:
        case shapes.Number(low, high):
            numbers = st.floats(low, high, allow_nan=False)
            return st.one_of(numbers, numbers.map(lambda value: f"{value:.5g}".replace(".", ",")))
        case shapes.Whole(low, high):
            return st.integers(low, high)
        case shapes.Text(such_as):
            return st.sampled_from(such_as)
        case shapes.Choice(known):
            return st.sampled_from(known)
        case shapes.Truth():
            return st.booleans()
        case shapes.Many(shapes.Number(low, high)) if (low, high) == (380, 780):
            return st.just(list(range(380, 781, 10)))
        case shapes.Many(shapes.Number(low, high)) if low == 0:
            # A curve on these wavelengths, drawn by its shape: 41 draws would take all the time.
            return st.sampled_from(
                [
                    [high * (0.1 + 0.9 * abs(math.sin(k * n / 40))) for n in range(41)]
                    for k in range(9)
                ]
            )
        case shapes.Many(of):
            return st.lists(strategy(of), max_size=_MOST_ITEMS)
        case shapes.ByName(names, of):
            return st.dictionaries(st.sampled_from(names), strategy(of), max_size=_MOST_ITEMS)
        case shapes.OneOf(ways):
            return st.one_of(*map(strategy, ways))
        case shapes.Checked():
            return st.sampled_from(_books())
    return _group(shape)


#: Ways to give a light's colour, of which one is enough.
_COLOURS = (("x", "y"), ("cct_K", "duv"), ("spectrum",))
#: Fields that need each other.
_TOGETHER = ({"name", "wavelengths_nm", "transmittance"}, {"wavelengths_nm", "values"})
#: Ends of the names of fields that say the same in another unit, the second to be left out.
_TWINS = (("_m", "_ft"), ("_lx", "_fc"))


def _group(fields: Mapping[str, Any]) -> Any:
    whole = {name: strategy(each) for name, each in sorted(fields.items())}
    needed = next((need for need in _TOGETHER if need <= set(whole)), set())
    ways = [set(way) for way in _COLOURS if set(way) <= set(whole)]
    if len(ways) < 2:
        ways = [set()]
    told = {name for way in ways for name in way}
    sound = [
        st.fixed_dictionaries(
            {name: whole[name] for name in sorted(way | needed)},
            optional={name: whole[name] for name in whole if name not in told | needed},
        ).map(_in_one_unit)
        for way in ways
    ]
    return st.one_of(*sound, *sound, st.fixed_dictionaries({}, optional=whole))


def _in_one_unit(group: dict[str, Any]) -> dict[str, Any]:
    """Leave out what says again in another unit what a group says already."""
    twice = {
        name.removesuffix(first) + second
        for first, second in _TWINS
        for name in group
        if name.endswith(first)
    }
    if "illuminance_lx" in group or "illuminance_fc" in group:
        twice.add("exposure_lx_s")
    return {name: each for name, each in group.items() if name not in twice}


def _places(plain: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Return the paths of everything inside plain data, of long lists only the first items."""
    found = [path] if path else []
    if isinstance(plain, dict):
        for name, inner in plain.items():
            found += _places(inner, (*path, name))
    elif isinstance(plain, list):
        for index, inner in enumerate(plain[:8]):
            found += _places(inner, (*path, index))
    return found


@st.composite
def _changed(draw: Any, base: Any, hostile: Any) -> Any:
    """Return plain data of which one to three places hold something else, or nothing."""
    plain = deepcopy(draw(base))
    for _ in range(draw(st.integers(1, 3))):
        places = [place for place in _places(plain) if place != ("ask",)]
        if not places:
            break
        *way, last = draw(st.sampled_from(places))
        inner = plain
        for step in way:
            inner = inner[step]
        if draw(st.integers(0, 5)) == 0:
            del inner[last]
        else:
            inner[last] = draw(hostile)
    return plain


@st.composite
def _nearly(draw: Any, base: Any) -> Any:
    """Return plain data of which one number is another, its own size or anything."""
    plain = deepcopy(draw(base))
    places = [
        place
        for place in _places(plain)
        if place != ("ask",) and isinstance(_at(plain, place), (int, float))
    ]
    if places:
        place = draw(st.sampled_from(places))
        old = float(_at(plain, place))
        factor = draw(st.sampled_from((-1.0, 0.0, 1e-3, 0.5, 0.9, 1.001, 1.1, 2.0, 1e3)))
        new = draw(
            st.one_of(st.just(old * factor), st.just(old * factor), st.sampled_from(_EXTREME))
        )
        _at(plain, place[:-1])[place[-1]] = new
    return plain


def _at(plain: Any, place: tuple[Any, ...]) -> Any:
    for step in place:
        plain = plain[step]
    return plain


def requests_of(ask: str) -> dict[str, Any]:
    """Return strategies of requests of one ask, by its declaration and its golden questions."""
    from evenkelvin.desk import ASKS

    module = import_module(f"evenkelvin.asks.{ASKS[ask]}")
    declared = strategy(module.FIELDS).map(lambda fields: {"ask": ask, **fields})
    cases = json.loads((HERE / "golden" / f"{ask}.json").read_text(encoding="utf-8"))
    answered = [case["request"] for case in cases if "problem" not in case["answer"]]
    # The search for balances takes its time: only its quicker questions are varied.
    golden = st.sampled_from(sorted(answered, key=lambda each: len(json.dumps(each)))[:6])
    stray = st.dictionaries(
        st.sampled_from(("budget", "x", "reading", "\ud800")), HOSTILE, min_size=1
    )
    return {
        "sound": declared,
        "nearly sound": _nearly(golden),
        "nearly declared": _nearly(declared),
        "hostile": _changed(golden, HOSTILE),
        "hostile declared": _changed(declared, HOSTILE),
        "stray": st.builds(lambda request, more: request | more | {"ask": ask}, golden, stray),
    }


#: How many requests of a hundred are of each kind.
_SHARES = {
    "sound": 20, "nearly sound": 35, "nearly declared": 10, "hostile": 20, "hostile declared": 10,
    "stray": 5,
}  # fmt: skip


def check(request: Any) -> str:
    """Ask; fail on an exception, on what is not JSON, and on a problem without a sentence."""
    from evenkelvin.desk import answer, answer_json

    kept = deepcopy(request)
    plain = answer(request)
    assert repr(request) == repr(kept), "the request was changed"
    answer_shapes.check(request, plain)
    text = json.dumps(plain, allow_nan=False)
    try:
        sent = json.dumps(request)
    except UnicodeEncodeError:
        sent = None
    if sent is not None:
        for forms in (False, True):
            json.loads(answer_json(sent, forms), parse_constant=_refuse)
    if "problem" not in json.loads(text):
        return "answered"
    problem = plain["problem"]
    assert isinstance(problem["field"], str)
    assert problem["message"].endswith((".", "?", "!", "”")), problem
    assert len(problem["message"]) < 1500, problem
    return "refused"


def _refuse(constant: str) -> None:
    raise AssertionError(f"{constant} in an answer")


def run(ask: str, count: int, start: int) -> Counter[str]:
    """Ask about ``count`` times; return how often it was answered and refused."""
    found: Counter[str] = Counter()

    def once(request: Any) -> None:
        try:
            found[check(request)] += 1
        except Exception as error:
            known = f"{type(error).__name__} at {traceback.extract_tb(error.__traceback__)[-1]}"
            if not found[known]:
                print(f"{ask}: {known}\n  {error!s:.300}\n  {request!r:.1500}", file=sys.stderr)
            found[known] += 1

    # Each kind is drawn by itself: drawn together, the simplest would crowd out the others.
    for kind, requests in requests_of(ask).items():
        drawn = settings(
            max_examples=max(1, count * _SHARES[kind] // 100), database=None, deadline=None,
            phases=[Phase.generate], suppress_health_check=list(HealthCheck),
        )  # fmt: skip
        seed(start)(drawn(given(requests)(once)))()
    return found


def main() -> None:
    """Ask as often as wanted and tell what came of it."""
    from evenkelvin.desk import ASKS

    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    start = int(sys.argv[2]) if len(sys.argv) > 2 else 2026
    faults = 0
    for ask in sys.argv[3:] or ASKS:
        began = time.perf_counter()
        found = run(ask, count, start)
        faults += sum(found.values()) - found["answered"] - found["refused"]
        print(f"{ask}: {dict(found)} in {time.perf_counter() - began:.0f} s", flush=True)
    sys.exit(f"{faults} faults" if faults else 0)


if __name__ == "__main__":
    main()

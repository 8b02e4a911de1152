# ruff: noqa: T201  a benchmark prints what it measured
"""The time of a rule on known facts, beside the same rule written by hand in Python.

Run by hand: python -m tests.benchmarks.rule_speed
"""

from collections.abc import Callable
from functools import partial
from timeit import Timer

from linter.language.compile import compile_need
from linter.language.evaluate import evaluate
from linter.language.judge import judging
from linter.language.verdict import Verdict
from linter.units import TOLERANCE, Unknown, awg_area
from linter.vocabulary.model import FactRef, Thing
from linter.vocabulary.shorthand import YES_NO
from tests.cases.language_world import checked, library, q, thing

_VOLUMES = {awg_area(14): q("2 in3"), awg_area(12): q("2.25 in3"), awg_area(10): q("2.5 in3")}
_CLAMP = q("2 in3")
_LEAST = q("6 in")


def near(a: float, b: float) -> bool:
    return abs(a - b) <= TOLERANCE * max(abs(a), abs(b))


def box_has_room(box: object) -> bool:
    conductors = sum([_VOLUMES[e.size] for e in box.wire_ends if not e.is_bond])
    clamps = _CLAMP if box.internal_clamps > 0 else 0.0
    fill = conductors + clamps
    return box.marked_volume >= fill or near(box.marked_volume, fill)


def ends_are_long_enough(box: object) -> bool:
    return all(e.free_length >= _LEAST or near(e.free_length, _LEAST) for e in box.wire_ends)


def end_is_long_enough(end: object) -> bool:
    return end.free_length >= _LEAST or near(end.free_length, _LEAST)


def seconds(functions: list[Callable[[Thing], object]], subject: Thing) -> list[float]:
    """The least time of each; they take turns, so that a busy machine slows all of them alike."""
    timers = [Timer(lambda each=each: each(subject)) for each in functions]
    counts = [max(1, timer.autorange()[0] // 10) for timer in timers]
    turns = [
        [timer.timeit(count) / count for timer, count in zip(timers, counts, strict=True)]
        for _ in range(60)
    ]
    return [min(times) for times in zip(*turns, strict=True)]


def box_of(ends: int) -> Thing:
    end = {"size": "12 AWG", "is_bond": False, "free_length": "8 in"}
    facts = {"marked_volume": "40 in3", "internal_clamps": 1}
    return thing("box", {**facts, "wire_ends": [{**end, "times": ends}]})


def main() -> None:
    pack = library()
    twelve, end = box_of(12), thing("wire_end", {"free_length": "8 in"})
    rules = (
        ("box fill, 12 wires", "box.marked_volume at least fill", box_has_room, twelve),
        ("every end of 12 long enough",
         "every e of box.wire_ends has free_length at least least_free_length",
         ends_are_long_enough, twelve),
        ("one end long enough", "wire_end.free_length at least least_free_length",
         end_is_long_enough, end),
    )  # fmt: skip
    for name, text, by_hand, subject in rules:
        need = checked(text, subject.kind, YES_NO)
        compiled, judged = compile_need(need, pack), judging(None, need, pack)
        assert compiled(subject) is by_hand(subject) is True
        assert judged(subject) is Verdict.MET
        carefully = partial(evaluate, need, library=pack)
        ways = [by_hand, compiled, judged, carefully]
        hand, ours, all_of_it, careful = seconds(ways, subject)
        print(f"{name}: by hand {hand * 1e6:.2f} us, compiled {ours * 1e6:.2f} us"
              f" ({ours / hand:.2f} times), judged {all_of_it * 1e6:.2f} us"
              f" ({all_of_it / hand:.2f} times), careful {careful * 1e6:.1f} us")  # fmt: skip
    unknown = box_of(12)
    last = unknown.__dict__["wire_ends"][-1]
    last.__dict__["size"] = Unknown({FactRef("wire_end", last.ref, "size")})
    judged = judging(None, checked("box.marked_volume at least fill", "box", YES_NO), pack)
    print(f"box fill with an unknown size: judged {seconds([judged], unknown)[0] * 1e6:.1f} us")


if __name__ == "__main__":
    main()

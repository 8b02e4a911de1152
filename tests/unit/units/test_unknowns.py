"""Whatever is done with an unknown says that it is not known, and why."""

import copy
import math
import operator
from collections.abc import Callable

import pytest

from linter.units import NotKnown, Unknown, is_known, read_quantity

VOLUME = Unknown(["box.volume"])
LENGTH = Unknown(["cable.length"])

ONE_SIDED: list[Callable[[Unknown], object]] = [
    *(bool, len, iter, next, reversed, float, int, complex, hash, abs, round),
    *(math.floor, math.ceil, math.trunc, operator.neg, operator.pos, operator.invert),
    *(operator.index, sum, list, all, any, max),
    lambda x: x.gangs,
    lambda x: x[0],
    lambda x: 3 in x,
    lambda x: {x},
    lambda x: {x: 1},
    lambda x: 1 if x else 2,
]
TWO_SIDED = [
    *(operator.eq, operator.ne, operator.lt, operator.le, operator.gt, operator.ge),
    *(operator.add, operator.sub, operator.mul, operator.truediv, operator.floordiv),
    *(operator.mod, divmod, pow, operator.and_, operator.or_, operator.xor),
]


@pytest.mark.parametrize("do", ONE_SIDED)
def test_asking_an_unknown_raises(do: Callable[[Unknown], object]) -> None:
    with pytest.raises(NotKnown) as caught:
        do(VOLUME)
    assert caught.value.because == {"box.volume"}


@pytest.mark.parametrize("do", TWO_SIDED)
@pytest.mark.parametrize("known", [3, 2.5, read_quantity("6 in").value])
def test_an_unknown_on_either_side_raises(
    do: Callable[[object, object], object], known: float
) -> None:
    for left, right in ((VOLUME, known), (known, VOLUME)):
        with pytest.raises(NotKnown) as caught:
            do(left, right)
        assert caught.value.because == {"box.volume"}


@pytest.mark.parametrize("do", TWO_SIDED)
def test_two_unknowns_give_both_reasons(do: Callable[[object, object], object]) -> None:
    with pytest.raises(NotKnown) as caught:
        do(VOLUME, LENGTH)
    assert caught.value.because == {"box.volume", "cable.length"}


def test_only_an_unknown_is_not_known() -> None:
    assert not is_known(VOLUME)
    for value in (0, None, "", False, "unknown", read_quantity("0 A")):
        assert is_known(value)


def test_an_unknown_can_be_printed_and_copied() -> None:
    assert str(VOLUME) == "unknown"
    assert f"{VOLUME}" == "unknown"
    assert repr(Unknown([2, "a"])) == "Unknown(['2', 'a'])"
    assert copy.deepcopy(VOLUME).because == VOLUME.because


@pytest.mark.parametrize(
    "do", [operator.add, operator.sub, operator.lt, operator.ge, operator.eq, operator.mul]
)
def test_a_quantity_with_an_unknown_raises(do: Callable[[object, object], object]) -> None:
    for left, right in ((VOLUME, read_quantity("18 in3")), (read_quantity("18 in3"), VOLUME)):
        with pytest.raises(NotKnown) as caught:
            do(left, right)
        assert caught.value.because == {"box.volume"}

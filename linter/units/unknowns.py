"""A value that is not known yet, and what anything done with it raises."""

from collections.abc import Iterable
from typing import NoReturn


class NotKnown(Exception):
    """A result cannot be told, because of what `because` names."""

    def __init__(self, because: Iterable[object]) -> None:
        self.because: frozenset[object] = frozenset(because)
        super().__init__(self.because)


class Unknown:
    """A value that is not known, with the reasons (facts, mostly) it hangs on.

    Whatever one does with it (compare, reckon, test, count, ask a fact of it) raises `NotKnown`;
    only `is_known`, `because` and printing are free, so straight code never takes it for a value.

    >>> try:
    ...     Unknown(["box.volume"]) > 3
    ... except NotKnown as reason:
    ...     sorted(reason.because)
    ['box.volume']
    """

    __slots__ = ("_reasons",)

    def __init__(self, because: Iterable[object]) -> None:
        # A tuple takes a quarter of a set, and most unknowns are never asked what they hang on.
        self._reasons = because if isinstance(because, tuple) else frozenset(because)

    @property
    def because(self) -> frozenset[object]:
        """The reasons it hangs on."""
        if isinstance(self._reasons, tuple):
            self._reasons = frozenset(self._reasons)
        return self._reasons

    def __repr__(self) -> str:
        return f"Unknown({sorted(map(str, self.because))})"

    def __str__(self) -> str:
        return "unknown"

    def __getattr__(self, name: str) -> NoReturn:
        # Names of Python's own protocols must look absent: copying and printing ask for them.
        if name.startswith("__"):
            raise AttributeError(name)
        raise NotKnown(self.because)

    def _unary(self) -> NoReturn:
        raise NotKnown(self.because)

    def _binary(self, other: object) -> NoReturn:
        also = other.because if isinstance(other, Unknown) else frozenset()
        raise NotKnown(self.because | also)

    def __hash__(self) -> NoReturn:
        raise NotKnown(self.because)

    def __round__(self, digits: int | None = None) -> NoReturn:
        raise NotKnown(self.because)

    __bool__ = __len__ = __iter__ = __next__ = __reversed__ = _unary
    __float__ = __int__ = __index__ = __complex__ = _unary
    __neg__ = __pos__ = __abs__ = __invert__ = __ceil__ = __floor__ = __trunc__ = _unary
    __eq__ = __ne__ = __lt__ = __le__ = __gt__ = __ge__ = _binary
    __add__ = __radd__ = __sub__ = __rsub__ = __mul__ = __rmul__ = _binary
    __truediv__ = __rtruediv__ = __floordiv__ = __rfloordiv__ = _binary
    __mod__ = __rmod__ = __divmod__ = __rdivmod__ = __pow__ = __rpow__ = _binary
    __and__ = __rand__ = __or__ = __ror__ = __xor__ = __rxor__ = _binary
    __contains__ = __getitem__ = _binary


def is_known(x: object) -> bool:
    """True of everything but an `Unknown`; the one question an unknown answers.

    >>> is_known(0), is_known(Unknown(["cable.length"]))
    (True, False)
    """
    return type(x) is not Unknown

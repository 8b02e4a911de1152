"""Sweeps up what is left of files already reported on, where a run goes through many."""

import gc
from collections.abc import Iterable, Iterator
from typing import TypeVar

T = TypeVar("T")
_EVERY = 20


def sweeping(files: Iterable[T]) -> Iterator[T]:
    """The files one after the other; between them, now and then, what they left is swept up.

    The things of a job name each other, so that only a collection frees them, and a run does none
    by itself. What outlives a sweep is kept to the end, and is not gone through again.

    >>> list(sweeping(["studio.yaml", "boathouse.yaml"]))
    ['studio.yaml', 'boathouse.yaml']
    """
    for number, each in enumerate(files, 1):
        yield each
        if number % _EVERY == 0:
            gc.collect()
            gc.freeze()

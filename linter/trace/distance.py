"""How far everything is from the panel, in cables, and by which way."""

from __future__ import annotations

from collections import deque
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.wiring.model import LinkKind, Wiring

Steps = dict[str, list[tuple[str, int]]]


class Distances:
    """The number of cables from the panel to each wire end, joint, pigtail and terminal reached."""

    def __init__(self, wiring: Wiring) -> None:
        self.of, self._before = _nearest(_steps(wiring), wiring.panel_landings)

    def path_to(self, name: str) -> tuple[str, ...]:
        """The ids from the panel to this one, by a shortest way; none where it is not reached."""
        if name not in self.of:
            return ()
        path = [name]
        while (before := self._before.get(path[-1])) is not None:
            path.append(before)
        return tuple(reversed(path))


def _steps(wiring: Wiring) -> Steps:
    steps: Steps = {}
    for one, other, cables in ties_of(wiring):
        steps.setdefault(one, []).append((other, cables))
        steps.setdefault(other, []).append((one, cables))
    return steps


def ties_of(
    wiring: Wiring, but: frozenset[LinkKind] = frozenset()
) -> Iterator[tuple[str, str, int]]:
    """All that is joined with each other but by some kinds of link, and how many cables between."""
    for parts in wiring.parts.values():
        yield from ((*part.ends, 1) for part in parts)
    for joint in wiring.joints.values():
        yield from ((each, joint.id, 0) for each in (*joint.wire_ends, *joint.pigtails))
    for landing in wiring.landings.values():
        yield from ((each, landing.terminal, 0) for each in landing.all_on_it)
    yield from ((*link.ends, 0) for link in wiring.links if link.kind not in but)


def _nearest(steps: Steps, starts: Iterable[str]) -> tuple[dict[str, int], dict[str, str]]:
    distance = dict.fromkeys(sorted(starts), 0)
    before: dict[str, str] = {}
    waiting = deque((each, 0) for each in distance)
    while waiting:
        name, far = waiting.popleft()
        if far > distance[name]:
            continue
        for other, cables in steps.get(name, ()):
            if far + cables < distance.get(other, far + cables + 1):
                distance[other] = far + cables
                before[other] = name
                if cables:
                    waiting.append((other, far + cables))
                else:
                    waiting.appendleft((other, far))
    return distance, before

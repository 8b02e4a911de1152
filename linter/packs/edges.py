"""Whether the proofs of a rule stand on both sides of each limit that its need compares with.

A case stands exactly at a limit if moving the limit by a hair, one way or the other, is noticed by
the rule's cases; one holds and another breaks because of it if moving it out of all reach, either
way, is noticed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.tree import Comparison, Limit, Node, children

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from linter.language.library import LimitValue
    from linter.packs.model import Pack, Rule

_HAIR = 1e-6
_OUT_OF_REACH = 1e9


class Edge(NamedTuple):
    """What the cases of a rule do not say of a limit: what is missing, what was looked for."""

    limit: str
    missing: str
    wanted: str


def edges_missing(pack: Pack, rule: Rule, notices: Callable[[Pack], bool]) -> Iterator[Edge]:
    """What the cases of a rule leave unsaid of each limit that its need compares with directly.

    `notices` tells whether any case of the rule comes out otherwise with another pack.
    """
    for name in dict.fromkeys(limits_compared(rule.need.node)):
        limit = pack.limits[name]
        value = pack.library.limits[name]
        if isinstance(value, bool) or not isinstance(value, int | float):
            continue
        shown = f"{name} ({limit.written})"
        hair = _HAIR * (abs(value) or 1.0)
        if not any(notices(_with(pack, name, value + by)) for by in (hair, -hair)):
            yield Edge(name, f"no case stands exactly at {shown}", f"a case exactly at {shown}")
        for by, way in ((_OUT_OF_REACH, "larger"), (-_OUT_OF_REACH, "smaller")):
            if not notices(_with(pack, name, value + by)):
                yield Edge(
                    name,
                    f"no case would come out otherwise if {shown} were much {way}",
                    f"a case that holds and one that breaks because of {name}",
                )


def limits_compared(node: Node) -> Iterator[str]:
    """The limits that stand by themselves on a side of a comparison, in the order written."""
    if isinstance(node, Comparison):
        yield from (side.name for side in (node.left, node.right) if isinstance(side, Limit))
    for child in children(node):
        yield from limits_compared(child)


def _with(pack: Pack, name: str, value: LimitValue) -> Pack:
    return pack._replace(library=pack.library.with_limit(name, value))

"""Which nets a source reaches, through switches in any one setting of all of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.wiring.model import Link, LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.trace.nets import Nets

Settings = frozenset[tuple[str, LinkKind]]
MOST_SETTINGS = 256  # four-way switches double them; eight in a row are more than a dwelling has
_OTHER_THROW = {LinkKind.THROW_1: LinkKind.THROW_2, LinkKind.THROW_2: LinkKind.THROW_1}


def reached_from(nets: Nets, starts: Iterable[int]) -> set[int]:
    """The nets that are reached from the given ones.

    Switches count as closed, or in either throw; but one way never needs a switch in both throws.
    Of one net, the settings of up to `MOST_SETTINGS` ways to it are followed further.
    """
    by_settings: dict[int, list[Settings]] = {}
    nothing_set: Settings = frozenset()
    waiting = [(net, nothing_set) for net in starts]
    while waiting:
        net, settings = waiting.pop()
        known = by_settings.setdefault(net, [])
        if len(known) >= MOST_SETTINGS or any(each <= settings for each in known):
            continue
        known.append(settings)
        for way in nets.ways[net]:
            after = _through(way.link, settings)
            if after is not None:
                waiting.append((way.to, after))
    return set(by_settings)


def _through(link: Link | None, settings: Settings) -> Settings | None:
    """The settings needed once the link is gone through; None where they contradict."""
    if link is None or link.kind not in _OTHER_THROW:
        return settings
    if (link.device, _OTHER_THROW[link.kind]) in settings:
        return None
    return settings | {(link.device, link.kind)}

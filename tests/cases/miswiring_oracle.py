"""What a wiring does, found without the trace: every position of all switches, flooded anew.

Two wirings do the same if in every position each outlet has the same between its terminals, each
bond terminal hangs on the bond alone, the same ground-fault devices stand in the way of hot and
neutral, and nothing else is live that was dead.
"""

from collections.abc import Iterator, Mapping
from itertools import product

from linter.job.devices import Switch
from linter.job.jobs import Job
from linter.job.stated import PanelId
from linter.wiring.model import LinkKind, Spot, Wiring

Tag = tuple[str, ...]
Ties = dict[str, set[str]]
_THROWS = (LinkKind.THROW_1, LinkKind.THROW_2)
VOLTS = {"A": 120.0, "B": -120.0}


class Doing:
    """What one wiring does; `same_as` compares it with another."""

    def __init__(self, job: Job, wiring: Wiring) -> None:
        self._job, self._wiring = job, wiring
        self._outlets = [
            device
            for box in job.boxes.values()
            for device in box.holds
            if not isinstance(device, Switch)
        ]
        self.switches = sorted({link.device for link in wiring.links if _is_contact(link.kind)})
        self.throws = {link.device for link in wiring.links if link.kind in _THROWS}
        self.short = False
        self.by_position = {
            position: self._at(dict(zip(self.switches, position, strict=True)))
            for position in product((False, True), repeat=len(self.switches))
        }
        self.guarded = self._guarded()

    def same_as(self, other: "Doing") -> str:
        """Why the two do the same; empty where they do not."""
        if self.short or other.short or self.guarded != other.guarded:
            return ""
        if self.by_position == other.by_position:
            return "each outlet has the same in every position of the switches"
        flips = [[False, True] if name in self.throws else [False] for name in self.switches]
        for flip in product(*flips):
            moved = {
                tuple(a != b for a, b in zip(position, flip, strict=True)): found
                for position, found in self.by_position.items()
            }
            if moved == other.by_position:
                return "only which throw of a switch is which has changed"
        return ""

    def _at(self, is_second: Mapping[str, bool]) -> tuple[object, ...]:
        """What the outlets and bonds have in one position."""
        ties = self._ties(is_second)
        sources = self._flooded(ties)
        self.short = self.short or any(_is_short(each) for each in sources.values())
        found: list[object] = []
        for device in self._outlets:
            tags = {}
            for terminal in self._wiring.by_device.get(str(device.name), ()):
                if not terminal.name.startswith("load"):
                    tags[terminal.name] = sources.get(terminal.id, frozenset())
            found.append((str(device.name), _seen(tags)))
        for each in self._wiring.terminals.values():
            if each.name == "bond":
                kinds = {tag[0] for tag in sources.get(each.id, frozenset())}
                found.append((each.id, tuple(sorted(kinds))))
        return tuple(found)

    def _ties(self, is_second: Mapping[str, bool]) -> Ties:
        ties: Ties = {}
        for one, other in (*_conductors(self._wiring), *_links(self._wiring, is_second)):
            ties.setdefault(one, set()).add(other)
            ties.setdefault(other, set()).add(one)
        return ties

    def _flooded(self, ties: Ties) -> dict[str, frozenset[Tag]]:
        found: dict[str, set[Tag]] = {}
        for wire, landing in self._wiring.panel_landings.items():
            circuit = self._wiring.wire_ends[wire].use.circuit or ""
            if landing.spot is Spot.BREAKER:
                space = landing.space or 0
                breaker = self._job.panels[PanelId(landing.panel)].breakers[space]
                row = (space - 1) // 2 + (landing.pole or 0)
                tag: Tag = ("hot", circuit, "AB"[row % 2], f"{breaker.space}/{landing.pole}")
            elif landing.spot is Spot.BOND_BAR:
                tag = ("bond",)
            else:
                tag = ("neutral", circuit)
            for each in _reached(ties, wire, set()):
                found.setdefault(each, set()).add(tag)
        return {each: frozenset(tags) for each, tags in found.items()}

    def _guarded(self) -> dict[str, tuple[bool, bool]]:
        """For each outlet and each device with a load side, whether hot and neutral need it."""
        closed = dict.fromkeys(self.switches, True)
        wiring, found = self._wiring, {}
        devices = {link.device for link in wiring.links if link.kind is LinkKind.LINE_TO_LOAD}
        for guard in sorted(devices):
            inside = {
                pair
                for link in wiring.links
                if link.device == guard
                for pair in (link.ends, link.ends[::-1])
            }
            ties = self._ties(closed)
            live = self._from(ties, Spot.BREAKER, inside)
            back = self._from(ties, Spot.NEUTRAL_BAR, inside)
            for device in self._outlets:
                names = {t.name: t.id for t in wiring.by_device.get(str(device.name), ())}
                hot = names.get("hot") or names.get("line hot", "")
                neutral = names.get("neutral") or names.get("line neutral", "")
                found[f"{guard}: {device.name}"] = (hot not in live, neutral not in back)
        return found

    def _from(self, ties: Ties, spot: Spot, without: set[tuple[str, str]]) -> set[str]:
        starts = [w for w, each in self._wiring.panel_landings.items() if each.spot is spot]
        return {name for wire in starts for name in _reached(ties, wire, without)}


def _conductors(wiring: Wiring) -> Iterator[tuple[str, str]]:
    """What conductors, joints and screws tie."""
    for parts in wiring.parts.values():
        yield from (part.ends for part in parts)
    for joint in wiring.joints.values():
        yield from ((joint.id, each) for each in (*joint.wire_ends, *joint.pigtails))
    for landing in wiring.landings.values():
        yield from ((landing.terminal, each) for each in landing.all_on_it)


def _links(wiring: Wiring, is_second: Mapping[str, bool]) -> Iterator[tuple[str, str]]:
    """What devices tie inside, their switches in these positions."""
    for link in wiring.links:
        is_closed = not _is_contact(link.kind) or (
            is_second[link.device] == (link.kind is not LinkKind.THROW_1)
        )
        if is_closed:
            yield link.ends


def _is_contact(kind: LinkKind) -> bool:
    return kind in (LinkKind.CLOSED_WHEN_ON, LinkKind.THROW_1, LinkKind.THROW_2)


def _reached(ties: Ties, start: str, without: set[tuple[str, str]]) -> set[str]:
    seen, waiting = set[str](), [start]
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting += [each for each in ties.get(name, ()) if (name, each) not in without]
    return seen


def _is_short(tags: frozenset[Tag]) -> bool:
    kinds = {tag[0] for tag in tags}
    if len(kinds) > 1:
        return True
    hots = {tag[3] for tag in tags if tag[0] == "hot"}
    return len(hots) > 1 or len({tag[1] for tag in tags if tag[0] == "neutral"}) > 1


def _seen(tags: Mapping[str, frozenset[Tag]]) -> tuple[object, ...]:
    """What is at each terminal, by kind and circuit, and the volts between each two."""
    kinds = tuple((name, tuple(sorted({tag[:2] for tag in tags[name]}))) for name in sorted(tags))
    levels = {name: _level(found) for name, found in tags.items()}
    volts = tuple(
        (one, other, abs(first - second))
        for one, first in sorted(levels.items())
        for other, second in sorted(levels.items())
        if one < other and first is not None and second is not None
    )
    return kinds, volts


def _level(tags: frozenset[Tag]) -> float | None:
    for tag in sorted(tags):
        return VOLTS[tag[2]] if tag[0] == "hot" else 0.0
    return None

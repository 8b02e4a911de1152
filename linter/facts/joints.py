"""Joints in boxes, and conductors that run through a box uncut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import is_used_as, name_of, size_fact, size_is_usual, size_of
from linter.facts.given import unknown
from linter.facts.knowing import all_hold, any_holds, hanging_on, largest, negated, smallest
from linter.facts.made import complete
from linter.job.metals import ALUMINIUM
from linter.job.stated import CableId, ProductId
from linter.units import TOLERANCE, Unknown
from linter.vocabulary.model import Thing
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.facts.knowing import Number, YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.products import Combination
    from linter.wiring.model import Joint, Passing, WireEnd

_SIZES = frozenset({"largest_size", "smallest_size"})


def joint_of(site: Site, made: Made, joint: Joint) -> Thing:
    """The facts of a joint."""
    ends = [site.wiring.wire_ends[each] for each in joint.wire_ends]
    sizes = [size_of(end.cable, end.colour, end.size) for end in ends]
    own = unknown("joint", joint.id, "largest_size")
    bonds = [is_used_as(end, Role.BOND) for end in ends]
    neutrals = [is_used_as(end, Role.NEUTRAL) for end in ends]
    box = made.thing("box", joint.box)
    values: Values = {
        "box": box,
        "wire_count": float(joint.wire_count),
        "pigtail_count": float(len(joint.pigtails)),
        "largest_size": largest(sizes, own),
        "smallest_size": smallest(sizes, own),
        "is_bond": all_hold(bonds),
        "has_bond": any_holds(bonds),
        "has_other_than_bond": any_holds(map(negated, bonds)),
        "is_neutral": all_hold(neutrals),
        "has_connector": joint.connector is not None,
        "mixes_metals": _mixes_metals(site, joint, ends),
        "connector_joins_metals": _joins_metals(site, joint),
    }
    values |= _connector_limits(site, joint, sizes)
    number = joint.id.rpartition("/")[2]
    is_usual = any(size_is_usual(made, end) for end in ends)
    return Thing(
        "joint",
        joint.id,
        box.place,
        values,
        label=f"joint {number} in {joint.box}",
        usual=_SIZES if is_usual else frozenset(),
    )


def _mixes_metals(site: Site, joint: Joint, ends: Sequence[WireEnd]) -> YesNo:
    """Whether aluminium meets copper in it; where nothing is said of any metal, none is."""
    metals = {site.job.cables[CableId(end.cable)].material for end in ends}
    others = metals - ALUMINIUM
    if others == metals or not others:
        return False
    return "copper" in others or unknown("joint", joint.id, "mixes_metals")


def _joins_metals(site: Site, joint: Joint) -> YesNo:
    connector = site.job.products.connectors.get(ProductId(joint.connector or ""))
    stated = None if connector is None else connector.joins_metals
    return unknown("joint", joint.id, "connector_joins_metals") if stated is None else stated


def _connector_limits(site: Site, joint: Joint, sizes: Sequence[Number]) -> dict[str, Number]:
    """The fewest and most conductors that the connector may join, where they are of these sizes."""
    least = unknown("joint", joint.id, "connector_least_wires")
    most = unknown("joint", joint.id, "connector_most_wires")
    limits: dict[str, Number] = {"connector_least_wires": least, "connector_most_wires": most}
    connector = site.job.products.connectors.get(ProductId(joint.connector or ""))
    if connector is None or connector.combinations is None:
        return limits
    listed = [each for each in sizes if not isinstance(each, Unknown)]
    if len(listed) < len(sizes):
        return dict.fromkeys(limits, hanging_on(sizes))
    fitting = [each for each in connector.combinations if _lists(each, listed)]
    fewest = [_count(each.least, least) for each in fitting]
    return {
        "connector_least_wires": smallest(fewest, 0.0),
        "connector_most_wires": largest((_count(each.most, most) for each in fitting), 0.0),
    }


def _count(count: int | None, own: Unknown) -> Number:
    return own if count is None else float(count)


def _lists(combination: Combination, sizes: Iterable[float]) -> bool:
    """Whether all sizes lie between the smallest and the largest that the package lists."""
    bounds = combination.smallest, combination.largest
    least = 0.0 if bounds[0] is None else bounds[0].value * (1 - TOLERANCE)
    most = float("inf") if bounds[1] is None else bounds[1].value * (1 + TOLERANCE)
    return all(least <= size <= most for size in sizes)


def link_joints(site: Site, made: Made) -> None:
    """The wire ends in each joint, and the circuits they belong to."""
    circuits = made.by_ref("circuit")
    for joint in (each for box in site.wiring.boxes.values() for each in box.joints):
        ends = made.of("wire_end", joint.wire_ends)
        uses = [site.wiring.wire_ends[each].use for each in joint.wire_ends]
        named = {use.circuit for use in uses if use.circuit in circuits}
        links: Values = {
            "wire_ends": ends,
            "circuits": made.of("circuit", (each for each in named if each is not None)),
        }
        complete(made.thing("joint", joint.id), links)


def passing_wire_of(made: Made, passing: Passing) -> Thing:
    """The facts of a conductor that runs through a box uncut."""
    conductor = name_of(passing.cable, passing.colour)
    ref = f"{conductor}@{passing.box}"
    cable = made.thing("cable", passing.cable)
    loop = passing.loop
    values: Values = {
        "box": made.thing("box", passing.box),
        "conductor": made.thing("conductor", conductor),
        "size": size_of(passing.cable, passing.colour, passing.size),
        "is_insulated": passing.insulated,
        "is_bond": is_used_as(passing, Role.BOND),
        "loop_length": unknown("passing_wire", ref, "loop_length") if loop is None else loop.value,
    }
    written = {} if loop is None else {"loop_length": loop.written}
    size = size_fact(passing.colour)
    if size in cable.written:
        written["size"] = cable.written[size]
    return Thing(
        "passing_wire",
        ref,
        cable.place,
        values,
        label=f"{passing.colour} of {passing.cable} through {passing.box}",
        written=written,
        usual=frozenset({"size"} if size in cable.usual else ()),
    )

"""Runs of wall and counter: what breaks them, their unbroken stretches, the outlets along them."""

from __future__ import annotations

from linter.units import AREA, LENGTH
from linter.vocabulary.kinds.devices import DEVICE_TYPES, RECEPTACLE_PLACES, RECEPTACLE_SERVES
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import YES_NO, a, all_of, quantity, word

RUN_FORMS = ("along the wall", "island", "peninsula", "free-standing")
BREAKS = (
    "door", "window to the floor", "fireplace", "cabinet", "sink", "range", "refrigerator", "other",
)  # fmt: skip

_OUTLETS = "Say which outlets stand along the run, and at what distance from its beginning."
_MEASURE = "Measure the run: its length, what breaks it, and where its outlets stand."
_HEIGHTS = "Measure the heights of the outlet and of the counter."

_OF_RUNS = (
    Fact("what", word("wall", "counter"), "what it is a run of", "wall"),
    Fact("form", word(*RUN_FORMS), "how it stands: along the wall, where the job does not say",
         "peninsula", "Look how the counter stands."),
)  # fmt: skip

RUN_KINDS = (
    Kind(
        "run", "runs", "a run of wall or counter, measured from one end", (
            Fact("room", a("room"), "the room it is in", ""),
            *_OF_RUNS,
            Fact("length", quantity(LENGTH), "its length, breaks too", "9 ft", _MEASURE),
            Fact("depth", quantity(LENGTH), "depth of the counter from front to rear", "24 in",
                 "Measure the depth of the counter."),
            Fact("area", quantity(AREA), "its length by its depth", "20 ft2",
                 "Measure the length and the depth of the counter."),
            Fact("height", quantity(LENGTH), "height of the counter's surface above the floor",
                 "36 in", "Measure the height of the counter."),
            Fact("overhang", quantity(LENGTH),
                 "how far the counter reaches beyond what it stands on", "4 in",
                 "Measure how far the counter reaches beyond its base."),
            Fact("has_provision", YES_NO,
                 "whether a box, cable or raceway is there for a receptacle to come", "yes",
                 "Look whether something is built in for a receptacle to come."),
            Fact("breaks", all_of("run_break"), "what breaks it", ""),
            Fact("stretches", all_of("stretch"), "its unbroken stretches", ""),
            Fact("outlets", all_of("placed_outlet"), "the outlets along it", "", _OUTLETS),
        ),
    ),
    Kind(
        "run_break", "breaks of runs", "what breaks a run: a door, a fireplace, a sink, a range", (
            Fact("run", a("run"), "the run", ""),
            Fact("room", a("room"), "the room it is in", ""),
            Fact("what", word(*BREAKS), "what it is", "door", "Look what it is."),
            Fact("position", quantity(LENGTH),
                 "distance from the beginning of the run to its near edge", "5 ft",
                 "Measure from the beginning of the run to its near edge."),
            Fact("width", quantity(LENGTH), "its width along the run", "32 in",
                 "Measure its width."),
            Fact("depth_behind", quantity(LENGTH),
                 "depth of the counter behind it; 0 where the job does not say", "2 in",
                 "Measure the counter behind it."),
        ),
    ),
    Kind(
        "stretch", "stretches", "an unbroken stretch of a run, from one break or end to the next", (
            Fact("run", a("run"), "the run", ""),
            Fact("room", a("room"), "the room it is in", ""),
            *_OF_RUNS,
            Fact("length", quantity(LENGTH), "its length", "6 ft", _MEASURE),
            Fact("depth", quantity(LENGTH), "depth of the counter from front to rear", "24 in",
                 "Measure the depth of the counter."),
            Fact("outlets", all_of("placed_outlet"),
                 "the outlets along it; none that stands in a break", "", _OUTLETS),
        ),
    ),
    Kind(
        "placed_outlet", "placed outlets", "an outlet where it stands along a run", (
            Fact("run", a("run"), "the run", ""),
            Fact("room", a("room"), "the room of the run", ""),
            Fact("outlet", a("outlet"), "the outlet", ""),
            Fact("type", word(*DEVICE_TYPES), "what it is", "receptacle"),
            Fact("serves", word(*RECEPTACLE_SERVES), "what it is there for", "counter",
                 "Ask what is to be used at it."),
            Fact("position", quantity(LENGTH), "distance from the beginning of the run", "2 ft",
                 "Measure from the beginning of the run to the outlet."),
            Fact("from_start", quantity(LENGTH), "distance from the beginning of its stretch",
                 "2 ft", _MEASURE),
            Fact("to_end_of_run", quantity(LENGTH), "distance to the other end of the run", "4 ft",
                 _MEASURE),
            Fact("height", quantity(LENGTH), "height above the floor", "16 in",
                 "Measure from the floor."),
            Fact("above_surface", quantity(LENGTH),
                 "how far it is above the counter's surface; 0 where it is below", "8 in",
                 _HEIGHTS),
            Fact("below_surface", quantity(LENGTH),
                 "how far it is below the counter's surface; 0 where it is above", "0 in",
                 _HEIGHTS),
            Fact("mounting", word(*RECEPTACLE_PLACES), "where it is mounted", "in the wall",
                 "Look where it is mounted."),
            Fact("distance_to_wall", quantity(LENGTH),
                 "of an outlet in the floor, its distance from the wall; 0 of any other", "12 in",
                 "Measure from the wall to the outlet in the floor."),
            Fact("is_wholly_switched", YES_NO,
                 "whether a switch turns off all its places; of a split receptacle one half stays",
                 "no"),
            Fact("is_in_appliance_space", YES_NO,
                 "whether it is in the space of one appliance that is not easily moved", "no",
                 "Ask what is to stand before it."),
        ),
    ),
)  # fmt: skip

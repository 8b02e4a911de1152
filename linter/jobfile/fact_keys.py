"""The keys of a job file that state the facts of each kind of thing.

Most facts are called as their key, but for a verb: `is_finished` is stated by `finished`,
`clamp_is_listed` by `clamp_listed`. The others stand here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.job.stating import Way

FROM_THE_TOP = ("",)
"""Begins a way that does not lead from the thing, but from the top of the file."""

_PREFIXES = ("is_", "has_", "runs_", "senses_")
_VERBS = ("_is_", "_are_", "_was_")


def keys_of(kind: str, fact: str) -> Iterator[Way]:
    """The keys that may state a fact of a kind, the likeliest first; most are no keys at all.

    >>> list(keys_of("box", "is_made_up"))
    [('is_made_up',), ('made_up',)]
    """
    special = _OTHERWISE.get(kind, {}).get(fact)
    if special is not None:
        yield special
    if fact == "marked_as":  # the way leads to the mark of its colour already
        yield ()
    yield (fact,)
    for prefix in _PREFIXES:
        if fact.startswith(prefix):
            yield (fact.removeprefix(prefix),)
    for verb in _VERBS:
        if verb in fact:
            yield (fact.replace(verb, "_"),)


def _top(*way: str) -> Way:
    return (*FROM_THE_TOP, *way)


_OTHERWISE: Mapping[str, Mapping[str, Way]] = {
    "dwelling": {
        "service_rating": ("rating",),
        "supply_voltage": ("voltage",),
        "is_split_phase": ("kind",),
        "type": _top("dwelling", "type"),
        "burns_fuel": _top("dwelling", "fuel_burning"),
        "is_existing": _top("dwelling", "existing"),
        "outside_area": _top("dwelling", "outside_area"),
        "measured_demand": _top("dwelling", "measured_demand"),
        "measured_over": _top("dwelling", "measured_over"),
        "circuits_energised": _top("site", "energised"),
        "temporary_is_ground_fault": _top("site", "temporary_power", "ground_fault"),
        "temporary_is_rainproof": _top("site", "temporary_power", "rainproof"),
        "temporary_is_back_fed": _top("site", "temporary_power", "back_fed"),
        **{
            fact: _top("site", fact)
            for fact in (
                "permit_posted", "plans_on_site", "address_posted", "dried_in", "open_to_view",
                "devices_fitted", "work_by", "owner_lives_there",
            )
        },
    },
    "service": {
        "conductor_size": ("conductor",),
        "conductor_material": ("material",),
        "neutral_size": ("neutral",),
        "disconnect_count": ("disconnects",),
        "disconnects_are_grouped": ("grouped",),
        "disconnects_are_apart": ("own_enclosures",),
        "emergency_disconnect_is_marked": ("emergency_marked",),
        "electrode_conductor_size": ("electrode_conductor",),
        "raceway_is_bonded_at_both_ends": ("raceway_bonded",),
        "service_count": ("services",),
    },
    "electrode": {"conductor_size": ("conductor",), "conductor_material": ("material",)},
    "pipe": {"bond_size": ("bond",)},
    "room": {
        "is_for_storage": ("storage",),
        "is_reached_from_grade": ("from_grade",),
        "is_reached_from_inside": ("from_inside",),
        "whirlpool_bond": ("whirlpool", "bond"),
        "whirlpool_is_double_insulated": ("whirlpool", "double_insulated"),
        "whirlpool_can_be_reached": ("whirlpool", "reachable"),
        "whirlpool_has_cord": ("whirlpool", "cord"),
        "whirlpool_receptacle_distance": ("whirlpool", "receptacle_distance"),
        "whirlpool_receptacle_faces": ("whirlpool", "receptacle_faces"),
    },
    "door": {"is_reached_from_grade": ("from_grade",), "is_for_vehicles": ("vehicles",)},
    "run": {"form": ("kind",)},
    "run_break": {"position": ("at",)},
    "placed_outlet": {"position": ("at",), "distance_to_wall": ("from_wall",)},
    "box": {
        "marked_volume": ("volume",),
        "is_metal": ("material",),
        "internal_clamps": ("clamps",),
        "has_cable_clamps": ("clamps",),
        "smallest_opening": ("opening",),
        "largest_opening": ("opening",),
        "surface_burns": ("surface",),
        "is_bonded": ("bond_screw",),
        "is_listed_for_fan": ("fan_rated",),
        "is_listed_for_luminaire": ("luminaire_rated",),
        "is_listed_for_floor": ("floor_rated",),
        "is_for_wet_place": ("wet_rated",),
        "is_marked_first_outlet": ("first_outlet_mark",),
        "is_in_ceiling": ("mounted",),
        "is_in_floor": ("mounted",),
        "fastening": ("fastened_by",),
        "holds_low_voltage": ("low_voltage",),
        "marked_weight": ("holds_up_to",),
    },
    "panel": {
        "main_rating": ("main",),
        "space_is_clear": ("clear",),
        "has_light": ("lit",),
        "is_sub_panel": ("role",),
        "entries_are_weathertight": ("weathertight_entries",),
    },
    "breaker": {"is_ground_fault": ("protection",), "is_arc_fault": ("protection",)},
    "appliance": {
        "needs_own_circuit": ("own_circuit",),
        "control_count": ("controls",),
        "loads_neutral": ("neutral",),
    },
    "device": {
        "is_ground_fault": ("protection",),
        "is_arc_fault": ("protection",),
        "is_for_aluminium": ("aluminium_rated",),
        "fixture_wires": ("fixture_wires", "count"),
        "fixture_wire_size": ("fixture_wires", "size"),
        "canopy_is_domed": ("domed_canopy",),
    },
    "receptacle": {
        "places": ("single",),
        "cover_closes_in_use": ("cover_in_use",),
        "is_in_appliance_space": ("appliance_space",),
        "is_reached_from_grade": ("from_grade",),
        "mounting": ("mounted",),
    },
    "bored_hole": {"is_in_metal": ("metal",)},
    "luminaire": {"has_disconnect": ("disconnect",)},
    "alarm": {"senses_smoke": ("senses",), "senses_carbon_monoxide": ("senses",)},
    "cable": {
        "type": ("sheath",),
        "size": ("sheath",),
        "insulated_conductors": ("sheath",),
        "bond_size": ("bond",),
        "runs_along_framing": ("along_framing", "distance_to_face"),
        "distance_to_face": ("along_framing", "distance_to_face"),
        "is_plated_along_framing": ("along_framing", "plated"),
        # What counts is the hole that lies nearest to an edge.
        "bored_holes_are_stated": ("holes", 0, "distance_to_edge"),
        "bundled_conductors": ("bundled", "conductors"),
        "bundled_cables": ("bundled", "cables"),
        "bundle_length": ("bundled", "length"),
        "bundle_is_in_sealed_hole": ("bundled", "sealed"),
        "attic_is_reached_by": ("over_attic", "reached_by"),
        "distance_to_hatch": ("over_attic", "distance_to_hatch"),
        "has_guard_strips": ("over_attic", "guarded"),
        "is_on_running_board": ("under_joists", "board"),
        "is_guarded": ("exposed", "guarded"),
        "only_crosses_return_air": ("return_air", "crosses"),
        "distance_to_deck": ("under_roof", "distance"),
        "deck_is_metal": ("under_roof", "metal"),
        "burial": ("underground", "method"),
        "cover": ("underground", "cover"),
        "lies_under": ("underground", "under"),
        "is_backfilled": ("underground", "backfilled"),
        "trench_was_seen": ("underground", "seen"),
        "rises_in_the_open": ("underground", "rises"),
        "guarded_up_to": ("underground", "guarded_up_to"),
        "guarded_down_to": ("underground", "guarded_down_to"),
    },
}  # fmt: skip

"""A job with hostile words wherever words may stand, and the longest names there may be."""

import json

HOSTILE = (
    "<script>alert(1)</script>\" onload='x' &amp; ]]> </style> \u202etxet\u202c \x1b[2J \u200b "
    + "W" * 120
)
ROOM, BOX, OTHER, CABLE, CIRCUIT = ("W" * 60, "m" * 60, "m" * 59 + "n", "M" * 60, "w" * 60)


def hostile_job() -> str:
    """The text of the job file."""
    words = {"note": HOSTILE}
    job = {
        "precover": 1,
        "job": {"name": HOSTILE, "pack": "us-nec-2023", "stage": "pulled", "notes": HOSTILE},
        "supplies": {CIRCUIT: {"kind": "split phase", "voltage": "240 V", **words}},
        "panel": {**words, "breakers": {1: {"rating": "15 A", "serves": HOSTILE, **words}}},
        "circuits": {CIRCUIT: {"breakers": [1], "use": "general", **words}},
        "rooms": {ROOM: {"use": "workshop", **words}},
        "boxes": {
            BOX: {
                "room": ROOM,
                "trade_size": HOSTILE,
                "holds": [{"receptacle": {"protection": "ground-fault", **words}}, "receptacle"],
                **words,
            },
            OTHER: {"room": ROOM, "volume": "20 in3", "holds": {"switch": {"controls": BOX}}},
        },
        "cables": {
            CABLE: {"sheath": "12/2 NM-B", "from": "panel", "to": BOX, "circuit": CIRCUIT, **words},
            "k": {
                "sheath": "12/3 NM-B without ground",
                "from": BOX,
                "to": OTHER,
                "at_to": {"free_length": "3 in"},
            },
        },
        "looked_at": [{"item": HOSTILE, "by": HOSTILE, "on": "2026-03-14", "found": HOSTILE}],
    }
    return json.dumps(job, indent=1)

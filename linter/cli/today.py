"""The day, as the clock of the machine has it: asked here, and nowhere else."""

import datetime


def today() -> str:
    """The day as year-month-day, where the machine stands."""
    return datetime.datetime.now(tz=datetime.UTC).astimezone().date().isoformat()

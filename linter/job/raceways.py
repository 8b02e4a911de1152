"""Raceways: conduit and tubing, as far as the job states them."""

from linter.job.stated import Stated
from linter.job.values import Area, Length, YesNo


class Raceway(Stated):
    """A raceway; `lies_in` lists the places it lies in that ask for more than a dry room does."""

    name: str
    kind: str | None = None
    size: Length | None = None
    fastened_at: Length | None = None
    support_spacing: Length | None = None
    lies_in: tuple[str, ...] | None = ()
    largest_conductor: Area | None = None
    bushed: YesNo | None = None
    note: str | None = None

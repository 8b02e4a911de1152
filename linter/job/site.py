"""The site at large: what an inspector wants to find ready, and who does the work."""

from typing import Literal

from linter.job.stated import Stated
from linter.job.values import YesNo


class TemporaryPower(Stated):
    """Power for the time of the work."""

    ground_fault: YesNo | None = None
    rainproof: YesNo | None = None
    back_fed: YesNo | None = None


class Site(Stated):
    """The state of the site and the terms of the work; what is left out is not stated.

    `includes` lists what else the work takes in, such as solar; `temporary_power` is False where
    there is none.
    """

    permit_posted: YesNo | None = None
    plans_on_site: YesNo | None = None
    address_posted: YesNo | None = None
    dried_in: YesNo | None = None
    open_to_view: YesNo | None = None
    devices_fitted: YesNo | None = None
    energised: YesNo | None = None
    work_by: str | None = None
    owner_lives_there: YesNo | None = None
    includes: tuple[str, ...] | None = ()
    temporary_power: TemporaryPower | Literal[False] | None = False
    note: str | None = None

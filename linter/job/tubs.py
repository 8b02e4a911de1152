"""Tubs with a pump."""

from linter.job.stated import Stated
from linter.job.values import Area, Length, YesNo


class Whirlpool(Stated):
    """A bathtub with a pump: its bond, and where the pump and its receptacle are."""

    bond: Area | None = None
    double_insulated: YesNo | None = False
    reachable: YesNo | None = None
    cord: YesNo | None = False
    receptacle_distance: Length | None = None
    receptacle_faces: YesNo | None = None

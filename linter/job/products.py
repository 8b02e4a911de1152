"""Limits printed on packages of products."""

from pydantic import Field

from linter.job.stated import ProductId, Stated
from linter.job.values import Area, Count, YesNo


class Combination(Stated):
    """How many conductors of which sizes a connector may join; `size` is short for both sizes."""

    least: Count | None = None
    most: Count | None = None
    smallest: Area | None = None
    largest: Area | None = None


class Connector(Stated):
    """A connector for joints."""

    name: ProductId
    combinations: tuple[Combination, ...] | None = None
    joins_metals: YesNo | None = None
    note: str | None = None


class Staple(Stated):
    """A staple or strap: the most cables that one may hold."""

    name: ProductId
    most_cables: Count | None = None
    largest_size: Area | None = None
    note: str | None = None


class Products(Stated):
    """All products whose packages were read."""

    connectors: dict[ProductId, Connector] = Field(default_factory=dict)
    staples: dict[ProductId, Staple] = Field(default_factory=dict)

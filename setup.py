"""The list of packages; everything else stands in pyproject.toml.

`rulesets/` and `schemas/` lie at the top of the repository, where people look for them, and are
installed as data inside `linter`. A search would not find them, a written list would go stale.
"""

from setuptools import find_packages, setup

setup(
    packages=[*find_packages(include=["linter", "linter.*"]), "linter.rulesets", "linter.schemas"]
)

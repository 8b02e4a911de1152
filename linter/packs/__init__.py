"""Rule packs: manifests, tables, limits, measures, rules, layers, proofs, cache.

Texts of packs come in; one checked `Pack` goes out, with the layer and line behind every value, or
all refusals in file order. `prove` runs the small cases that every rule carries; `describe` lays
one rule open for printing.

>>> from linter.packs.values import unit_choice
>>> from linter.units import LENGTH
>>> unit_choice({"length": "in"})[LENGTH]
'in'
"""

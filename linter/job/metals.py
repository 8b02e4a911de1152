"""Metals of conductors, as a job names them."""

ALUMINIUM = frozenset({"aluminium", "copper-clad aluminium"})
"""Those with a core of aluminium, which wants terminals and connectors marked for it."""

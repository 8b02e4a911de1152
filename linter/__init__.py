"""Audits the rough-in wiring of a small dwelling before the walls are closed.

A job file and a rule pack go in; findings for a person to confirm come out.
The map of the packages is in DEVELOPERS.md; arrows between them point one way.
"""

__version__ = "0.1.0"

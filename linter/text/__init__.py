"""Words for people: places in files, refusals, nearest names, lists, numbers.

In come positions, words and numbers; out come sentences that an electrician can act on.

>>> str(Place("kiln-room.yaml", 14, 12))
'kiln-room.yaml:14:12'
"""

from linter.text.refusals import Place, Refusal, Refused
from linter.text.words import clean, inert_line, join_words, nearest, write_number

__all__ = [
    "Place",
    "Refusal",
    "Refused",
    "clean",
    "inert_line",
    "join_words",
    "nearest",
    "write_number",
]

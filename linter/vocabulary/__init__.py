"""Kinds of thing and their facts: name, dimension, meaning, example; what rules may speak of.

In: nothing. Out: `KINDS`, the one declaration that feeds the type checker of the language, the
messages ("did you mean ...") and the reference for pack writers; and `Thing`, which carries the
values.

>>> from linter.vocabulary.kinds import KINDS
>>> KINDS["wire_end"].fact("free_length").meaning
'from where the conductor leaves its sheath in the box to its end'
"""

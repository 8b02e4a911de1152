"""The language of rules: from text to tree, to checked tree, to function and working.

In come expressions of rule packs, tables, limits and things; out come refusals with their places,
judgements of three values with the facts they hang on, and the arithmetic a finding shows.

>>> from linter.language.parse import parse
>>> from linter.language.print import to_text
>>> from linter.text import Place
>>> to_text(parse("box.marked_volume   at least (fill)", Place("boxes.yaml", 1, 1)))
'box.marked_volume at least fill'
"""

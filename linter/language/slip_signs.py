"""Signs that are not of the language, and what is said of each.

A row fits what is written from the place of the slip on; the first that fits is said. It has a
pattern, then what was found, expected, and how to mend it.
"""

from __future__ import annotations

_LANGUAGE = "the words of this language"
SIGNS: tuple[tuple[str, str, str, str], ...] = (
    (r">=|=>|\u2265|\u2a7e", '"{said}" is not of this language', _LANGUAGE, 'write "at least"'),
    (r"<=|=<|\u2264|\u2a7d", '"{said}" is not of this language', _LANGUAGE, 'write "at most"'),
    (r"!=|<>|\u2260", '"{said}" is not of this language', _LANGUAGE, 'write "is not"'),
    (r"==?", '"{said}" is not of this language', _LANGUAGE, 'write "is"'),
    (r">", '"{said}" is not of this language', _LANGUAGE, 'write "more than"'),
    (r"<", '"{said}" is not of this language', _LANGUAGE, 'write "less than"'),
    (r"&&?", '"{said}" is not of this language', _LANGUAGE, 'write "and"'),
    (r"\|\|?", '"{said}" is not of this language', _LANGUAGE, 'write "or"'),
    (r"[!~\u00ac]", '"{said}" is not of this language', _LANGUAGE, 'write "not"'),
    (
        r"[\u00d7\u00b7]",
        '"{said}" is not of this language',
        "a sign that is on every keyboard",
        'write "*"',
    ),
    (
        r"\u00f7",
        '"{said}" is not of this language',
        "a sign that is on every keyboard",
        'write "/"',
    ),
    (
        r"[\u2010-\u2015\u2212]",
        '"{said}" is not of this language',
        "a sign that is on every keyboard",
        'write "-"',
    ),
    (
        r"'[^'\n]*'",
        "{said} stands in single quotes",
        "a word in double quotes",
        'write it as "kitchen" is written here',
    ),
    (
        r"['\u2018\u2019\u201c\u201d\u201e\u00ab\u00bb]",
        "{said} is not a quote of this language",
        "a word in double quotes",
        'write it as "kitchen" is written here',
    ),
    (
        r'"',
        "these quotes are not closed",
        "a word in double quotes, on one line",
        'put another " after the word',
    ),
    (
        r"%",
        '"%" is not of this language',
        "a limit that states the percentage",
        "state it as a limit and multiply by its name",
    ),
    (r"\^", "powers are not of this language", "+, -, * or /", "multiply as often as needed"),
    (
        r"[\[{{]",
        'lists do not stand in "{said}"',
        "a list in parentheses",
        'write ("kitchen", "laundry")',
    ),
    (
        r"[\]}}]",
        '"{said}" closes nothing in this language',
        "a list in parentheses",
        'write ("kitchen", "laundry")',
    ),
    (
        r"\.\d+",
        '"{said}" is a number of a code',
        "the name of a limit",
        "state it as a limit, with its clause, and write its name",
    ),
    (
        r"\.",
        "a dot stands by itself",
        "a fact by its path, without spaces",
        "write the thing, the dot and the fact together, as in box.volume",
    ),
    (
        r"#|//",
        "a remark cannot stand in an expression",
        _LANGUAGE,
        "put the remark above the rule, where the file's own remarks go",
    ),
    (
        r"[;:]",
        '"{said}" is not of this language',
        'conditions joined with "and" or "or"',
        "write one expression, or one step for each",
    ),
    (
        r"[$£€@§°]",
        '"{said}" is not of this language',
        "names, words in quotes, numbers and signs",
        "leave it out; units and clauses stand in limits and tables",
    ),
    (r"\?", '"?" is not of this language', '"if C then V else V"', "write the choice out in words"),
)

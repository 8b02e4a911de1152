"""Turns audits and box make-ups into what people and programs read: terminal text, JSON, box cards.

Values of `audit` come in, text goes out; only `cli` writes it anywhere. `rich` is imported by what
prints to a terminal, and only then.
"""

"""Drawings of boxes: a box's wiring comes in, shapes with their places go out, then SVG.

What is drawn (`contents`), in which order (`order`), where (`places`) and with which marks (`svg`)
are modules apart; only the last knows SVG.

>>> from linter.reports.drawing.letters import width_of
>>> width_of("black", 10.0) < width_of("traveller", 10.0)
True
"""

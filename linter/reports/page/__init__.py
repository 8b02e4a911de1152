"""The report as one HTML file: an audit, its job and wiring come in, the text of the file goes out.

Nothing in it needs a network or a script; whatever a job says is text in it and nothing else.

>>> from linter.reports.page.elements import el, written
>>> written(el("b", "5 < 6"))
'<b>5 &lt; 6</b>'
"""

"""Judges a job by a rule pack: what a person should look at, and what cannot be told yet.

A `Job` and a `Pack` come in; an `Audit` goes out, in the order of a walk through the rooms.
The same job and pack give the same findings, byte for byte.
"""

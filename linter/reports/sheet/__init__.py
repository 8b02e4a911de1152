"""The field sheet: one HTML form, offline, of what to measure and look at, in walking order.

An audit comes in, with a function that says where the job states a fact; the text of the file goes
out. It prints as a sheet for a pencil; its one script keeps what is typed and saves it as a file.
"""

"""What people said of findings, and whether it still holds.

The text of a sign-off file and an examined job come in; what each finding counts for goes out.
Nothing is hidden: what was judged not a defect stays in every report, with the reason; what was
said of facts that have changed since, or of nothing, is told as such.
"""

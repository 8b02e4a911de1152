"""The three things that a person says of a finding; every audit loads these, and little more."""

AGREED = "agreed"
PUT_RIGHT = "put right"
NOT_A_DEFECT = "not a defect"
SAYINGS = (AGREED, PUT_RIGHT, NOT_A_DEFECT)

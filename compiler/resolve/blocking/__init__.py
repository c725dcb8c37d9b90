"""A play's blocking rules and protection put to the defence it is drawn against."""

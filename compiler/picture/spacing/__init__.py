"""Men moved so that paths have room: the hole, who leads, letters of defenders beside lines."""

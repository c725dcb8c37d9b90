"""What a size shows: the frame, the scale, the field under it."""

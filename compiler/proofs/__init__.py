"""What a check says, kept between commands: what it hangs on, and where it stands now."""

"""What the club wrote: its file, its meaning, and what is wrong with it."""

"""Facts of a programme in words: dates, greens, sizes, and the texts that explain the work."""

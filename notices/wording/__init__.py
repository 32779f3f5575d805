"""Programme facts in words: dates, greens, sizes, and the texts that explain the work."""

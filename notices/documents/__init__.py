"""What each reader gets: content chosen and put in order, before it is set."""

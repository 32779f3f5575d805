"""From a plan to everything that follows from it, worked out once and never changed."""

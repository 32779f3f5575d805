"""Documents set as page, paper, mail, calendar and plain text."""

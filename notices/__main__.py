"""Run the command line as ``python -m notices``."""

from notices.cli import main

if __name__ == "__main__":
    main()

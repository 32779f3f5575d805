"""Run the command line as ``python -m notices``."""

from notices.cli import run

if __name__ == "__main__":
    run()

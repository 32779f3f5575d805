"""Open a workbook in LibreOffice, save it as .xlsx, .ods and .xls, and build the same pack from each.

    python .ci/through_libreoffice.py NOTICES PLAN PACK…

NOTICES is the command; each PLAN is followed by the pack that was built from it. LibreOffice says
that a file could not be loaded and exits with 0, so what counts is whether it wrote one.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

PATIENCE = 300
"""Seconds that LibreOffice may take: it sets itself up at its first start."""


def run(*command: str | Path, home: Path | None = None) -> str:
    """Run a command and return what it said; stop where it fails."""
    environment = os.environ | ({"HOME": str(home)} if home else {})
    done = subprocess.run(
        [str(part) for part in command],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        timeout=PATIENCE,
    )
    said = done.stdout + done.stderr
    if done.returncode != 0:
        sys.exit(f"{' '.join(map(str, command))} exited with {done.returncode}\n{said}")
    return said


def digests(pack: Path) -> dict[str, str]:
    """Return the digest of every file in a pack."""
    return {
        str(path.relative_to(pack)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(pack.rglob("*"))
        if path.is_file()
    }


def saved(book: Path, suffix: str, scratch: Path) -> Path:
    """Return what LibreOffice makes of a workbook when it saves it."""
    folder = scratch / f"saved-as-{suffix}"
    said = run(
        *("soffice", "--headless", "--convert-to", suffix, "--outdir", folder, book),
        home=scratch,
    )
    written = folder / f"{book.stem}.{suffix}"
    if not written.is_file():
        sys.exit(f"LibreOffice wrote no {suffix} of {book}\n{said}")
    return written


def differing(notices: str, plan: Path, pack: Path, scratch: Path) -> list[str]:
    """Return in which ways the packs from the workbooks differ from the one from YAML."""
    book = scratch / "plan.xlsx"
    run(notices, "convert", plan, book)
    faults = []
    for name, path in {
        "as written": book,
        "saved as .xlsx": saved(book, "xlsx", scratch),
        "saved as .ods": saved(book, "ods", scratch),
        "saved as .xls": saved(book, "xls", scratch),
    }.items():
        out = scratch / f"pack {name}"
        run(notices, "build", path, "--out", out)
        expected, found = digests(pack), digests(out)
        other = sorted(file for file in expected | found if expected.get(file) != found.get(file))
        print(f"{plan}, workbook {name}: {len(found)} files, {len(other)} differ")
        faults += [f"{plan}, workbook {name}: {file} differs" for file in other]
    return faults


def main() -> None:
    """Take each plan with its pack through LibreOffice."""
    notices, *pairs = sys.argv[1:]
    faults: list[str] = []
    for plan, pack in zip(pairs[::2], pairs[1::2], strict=True):
        with tempfile.TemporaryDirectory() as scratch:
            faults += differing(notices, Path(plan), Path(pack), Path(scratch))
    print("\n".join(faults))
    sys.exit(bool(faults))


if __name__ == "__main__":
    main()

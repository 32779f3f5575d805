"""Time a whole pack; run by hand: python tests/benchmarks/time_pack.py [PLAN].

Each line is a process of its own. Processor time is what the work took, its children included, from
the start of Python to its end; wall-clock time is what somebody waits, and grows with whatever else
the machine does. The bare renderers get the HTML of the sheets as they were set in the end, so the
difference is everything that we add: reading, working out, wording, drawing, and trying which size
fits a page.

On 30 November 2026, on two quiet cores of an EPYC (withy-hollow):

| what | wall s | CPU s | peak MB |
|---|---|---|---|
| WeasyPrint alone, the same HTML | 6.2 | 6.1 | 114 |
| the whole pack, on one processor | 7.1 | 7.0 (1.14 of WeasyPrint alone) | 312 |
| the whole pack, on both | 4.9 (0.80 of WeasyPrint alone) | 7.4 | 197 |
| again, nothing changed | 0.5 | 0.5 | 60 |
| --since it, nothing | 1.9 | 1.9 | 121 |
| --since it, a reserve date a day later | 4.4 | 6.1 | 180 |
| --since it, the name of a fixture | 3.3 | 3.3 | 180 |
| --since it, the last work a day later | 5.3 | 7.8 | 201 |
| Chromium's --print-to-pdf, the same HTML | 10.0 | 7.5 | 239 |

The aim is at most 1.15 of WeasyPrint alone on one processor, and less on two. Some 2 s are our own
(imports 0.6, documents 0.6, pictures of the email 0.3, of the front page 0.1). They are made up for
by fonts that are loaded once, and by setting most sheets once or twice (`rendering/ways.py`).
"""

from __future__ import annotations

import datetime as dt
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

EXAMPLE = Path(__file__).parents[2] / "examples" / "withy-hollow" / "plan.yaml"
CHROMIUM = shutil.which("chromium")
TURNS = 4

# What each process runs; the arguments are the plan and a folder.
BUILD = """
import runpy, sys
sys.argv[1:] = ["build", sys.argv[1], "--out", *sys.argv[2:]]
runpy.run_module("notices", run_name="__main__")
"""
HTML = """
import sys
from pathlib import Path
import notices
from notices.documents.model import Sheet
from notices.paths import templates_folder
from notices.rendering import pdf, sheets, ways
filled = {}
write, fill = pdf.Layout.write, pdf.lay_out
def laid_out(html, *, base):
    layout = fill(html, base=base)
    filled[id(layout)] = html
    return layout
def written(layout):
    kept.append(filled[id(layout)])
    return write(layout)
kept = []
ways.lay_out, pdf.Layout.write = laid_out, written
loaded = notices.load_plan(Path(sys.argv[1]))
programme = notices.work_out(loaded.plan, loaded.plan.issued)
documents = notices.write_documents(programme, notices.canonical(loaded.plan))
for item in documents.items:
    if isinstance(item, Sheet):
        sheets.write_sheet(item)
        base = templates_folder().resolve().as_uri() + "/"
        page = kept[-1].replace("<head>", f'<head><base href="{base}">', 1)
        (Path(sys.argv[2]) / f"{item.document.name}.html").write_text(page, encoding="utf-8")
"""
WEASYPRINT = """
import sys
from pathlib import Path
import weasyprint
for path in sorted(Path(sys.argv[2]).glob("*.html")):
    weasyprint.HTML(path).write_pdf(path.with_suffix(".pdf"), pdf_variant="pdf/ua-1")
"""
IN_CHROMIUM = """
import subprocess, sys
from pathlib import Path
for path in sorted(Path(sys.argv[2]).glob("*.html")):
    subprocess.run([sys.argv[1], "--headless", "--no-sandbox", "--disable-gpu",
        "--no-pdf-header-footer", f"--print-to-pdf={path.with_suffix('.pdf')}", path.as_uri()],
        stderr=subprocess.DEVNULL, check=True)
"""


def measured(
    program: str, *arguments: str | Path, processors: int | None = None
) -> tuple[float, float, float]:
    """Wall clock [s], processor time [s] and the most memory of one process [MB]."""
    all_processors = os.sched_getaffinity(0)
    os.sched_setaffinity(0, sorted(all_processors)[:processors])
    start = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-c", program, *map(str, arguments)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    os.sched_setaffinity(0, all_processors)
    # What the process waited for itself, such as its helpers, is in what it used.
    _, status, used = os.wait4(process.pid, 0)
    wall = time.perf_counter() - start
    assert os.waitstatus_to_exitcode(status) == 0
    return wall, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def kept(old: Path, new: Path) -> str:
    """How many files of a pack are those of the earlier one, to the byte."""
    files = {path.name: path.read_bytes() for path in old.iterdir()}
    same = [p.name for p in new.iterdir() if files.get(p.name) == p.read_bytes()]
    of = {ending: sum(name.endswith(ending) for name in files) for ending in (".pdf", "")}
    pdfs = sum(name.endswith(".pdf") for name in same)
    return f"{pdfs} of {of['.pdf']} PDFs kept, {len(same)} of {of['']} files"


def later(days: str) -> str:
    """The same days, each a day later."""
    return " to ".join(
        str(dt.date.fromisoformat(day) + dt.timedelta(days=1)) for day in days.split(" to ")
    )


def changed(plan: Path, folder: Path) -> Iterator[tuple[str, Path]]:
    """Copies of the plan with one thing changed in each, and what it is."""
    import notices  # noqa: PLC0415 - the processes that are measured load it themselves

    def copy() -> dict[str, Any]:
        data: dict[str, Any] = json.loads(
            json.dumps(notices.canonical(notices.load_plan(plan).plan))
        )
        return data

    def written(data: dict[str, Any], name: str) -> Path:
        path = folder / f"{name}.yaml"
        path.write_text(json.dumps(data), encoding="utf-8")
        return path

    yield "nothing", written(copy(), "nothing")
    data = copy()
    work = data["works"][-1]
    if "reserve_dates" in work:
        work["reserve_dates"] = later(work["reserve_dates"])
        yield "a reserve date a day later", written(data, "reserve")
    data = copy()
    if fixtures := data.get("fixtures"):
        fixtures[-1]["name"] = "Presidents’ Day"
        yield "the name of a fixture", written(data, "fixture")
    data = copy()
    work = data["works"][-1]
    work["dates"] = later(work["dates"])
    yield "the last work a day later", written(data, "work")


def line(name: str, taken: tuple[float, float, float], more: str = "") -> None:
    """Print one line of the table."""
    wall, cpu, memory = taken
    print(f"{name:42} {wall:8.2f} {cpu:8.2f} {memory:8.0f}  {more}", flush=True)


def main() -> None:
    """Measure and print a table."""
    plan = Path(sys.argv[1]).resolve() if sys.argv[1:] else EXAMPLE
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        pack, html = folder / "pack", folder / "html"
        html.mkdir()
        print(f"{plan.parent.name:42} {'wall s':>8} {'CPU s':>8} {'peak MB':>8}")
        measured(HTML, plan, html)
        # In turns, so that both meet what else the machine does; the first build also reads from
        # the disk, and the fewest seconds count.
        one, bare = [], []
        for turn in range(TURNS):
            one.append(measured(BUILD, plan, folder / f"one-{turn}", processors=1))
            bare.append(measured(WEASYPRINT, plan, html, processors=1))
        cold, alone = (min(taken, key=lambda taken: taken[1]) for taken in (one, bare))
        line("WeasyPrint alone, the same HTML", alone)
        line("the whole pack, on one processor", cold, f"{cold[1] / alone[1]:.2f} of its CPU")
        cold = measured(BUILD, plan, pack)
        files = list(pack.iterdir())
        pdfs = sum(path.suffix == ".pdf" for path in files)
        line("the whole pack, on all", cold, f"{pdfs} PDFs, {len(files)} files")
        line("again, nothing changed", measured(BUILD, plan, pack))
        for number, (what, path) in enumerate(changed(plan, folder)):
            new = folder / f"pack-{number}"
            line(
                f"--since it, {what}", measured(BUILD, path, new, "--since", pack), kept(pack, new)
            )
        if CHROMIUM:
            line("Chromium's --print-to-pdf, the same HTML", measured(IN_CHROMIUM, CHROMIUM, html))
        else:
            print("no chromium here to compare with")


if __name__ == "__main__":
    main()

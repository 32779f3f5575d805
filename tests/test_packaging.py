"""What a club installs builds the same pack as the checkout: sdist → wheel → environment → pack."""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import tarfile
import zipfile
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
EXAMPLE = ROOT / "examples" / "tansy-down"

EXPECTED = {
    "manifest.json",
    "index.html",
    "member-email.eml",
    "board-notice-a4.pdf",
    "calendar.ics",
}

Digests = dict[str, str]
"""Of every file in a pack, by its path within: a readable difference when packs differ."""


@dataclass(frozen=True)
class Distributions:
    sdist: Path
    wheel: Path


@dataclass(frozen=True)
class Packs:
    """One plan built in every way in which Notices can be installed and called."""

    wheel_module: Digests
    editable_module: Digests
    wheel_home: Path
    editable_home: Path
    started: Digests
    started_in_checkout: Digests


def run(*command: str | Path, cwd: Path) -> str:
    """Run a command away from the checkout and return what it printed."""
    # Without these the environment under test could borrow from the one that runs the tests.
    environment = {
        name: value
        for name, value in os.environ.items()
        if name not in {"PYTHONPATH", "PYTHONHOME", "VIRTUAL_ENV"}
    }
    done = subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env=environment | {"PIP_DISABLE_PIP_VERSION_CHECK": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
    return done.stdout


def digests(pack: Path) -> Digests:
    return {
        str(path.relative_to(pack)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(pack.rglob("*"))
        if path.is_file()
    }


@pytest.fixture(scope="session")
def distributions(tmp_path_factory: pytest.TempPathFactory) -> Distributions:
    out = tmp_path_factory.mktemp("dist")
    # Without --sdist or --wheel the wheel is made from the unpacked sdist: nothing may be missing
    # from the one that the other needs.
    run(sys.executable, "-m", "build", "--outdir", out, ROOT, cwd=out)
    (sdist,) = out.glob("*.tar.gz")
    (wheel,) = out.glob("*.whl")
    return Distributions(sdist, wheel)


@pytest.fixture(scope="session")
def installed(distributions: Distributions, tmp_path_factory: pytest.TempPathFactory) -> Packs:
    folder = tmp_path_factory.mktemp("installed")
    shutil.copytree(EXAMPLE, folder / "club")
    plan = folder / "club" / "plan.yaml"
    run(sys.executable, "-m", "venv", folder / "venv", cwd=folder)
    programs = folder / "venv" / "bin"

    def built(name: str, *notices: str | Path) -> Digests:
        run(*notices, "build", plan, "--out", folder / name, cwd=folder)
        return digests(folder / name)

    def new(name: str) -> Digests:
        run(*script, "new", folder / name, "--from", "marlpit-common", cwd=folder)
        return digests(folder / name)

    def home() -> Path:
        program = "import notices.cli; print(notices.cli.__file__)"
        return Path(run(programs / "python", "-c", program, cwd=folder).strip()).parent

    pip = (programs / "python", "-m", "pip")
    module = (programs / "python", "-m", "notices")
    script = (programs / "notices",)

    run(*pip, "install", "--no-compile", distributions.wheel, cwd=folder)
    wheel_home = home()
    wheel_module = built("wheel-module", *module)
    started = new("started")

    # The same environment, hence the same libraries: a difference can only be ours.
    run(*pip, "uninstall", "--yes", "notices", cwd=folder)
    run(*pip, "install", "--no-deps", "--editable", ROOT, cwd=folder)
    return Packs(
        wheel_module,
        editable_module=built("editable-module", *module),
        wheel_home=wheel_home,
        editable_home=home(),
        started=started,
        started_in_checkout=new("started-in-checkout"),
    )


def test_the_wheel_carries_templates_types_and_the_licence_of_the_fonts(
    distributions: Distributions,
) -> None:
    with zipfile.ZipFile(distributions.wheel) as wheel:
        names = set(wheel.namelist())
    carried = {name.removeprefix("notices/_templates/") for name in names if "_templates/" in name}
    templates = ROOT / "templates"
    assert carried == {
        path.relative_to(templates).as_posix() for path in templates.rglob("*") if path.is_file()
    }
    assert "fonts/OFL.txt" in carried
    examples = {name.removeprefix("notices/_examples/") for name in names if "_examples/" in name}
    assert examples >= {
        path.relative_to(ROOT / "examples").as_posix()
        for path in (ROOT / "examples").rglob("*")
        if path.is_file()
    }
    assert not any(name.startswith(("tests/", "examples/")) for name in names)
    # Type checkers read the types of a package only where this lies in it (PEP 561).
    assert "notices/py.typed" in names


def test_the_sdist_carries_what_its_readers_need(distributions: Distributions) -> None:
    with tarfile.open(distributions.sdist) as sdist:
        names = {name.partition("/")[2] for name in sdist.getnames()}
    assert {
        "README.md",
        "CHANGELOG.md",
        "pyproject.toml",
        "notices/cli.py",
        "examples/withy-hollow/plan.yaml",
        "tests/test_packaging.py",
    } <= names


def test_each_pack_came_from_the_installation_it_was_meant_to(installed: Packs) -> None:
    assert installed.wheel_home.parent.name == "site-packages"
    assert installed.editable_home == ROOT / "notices"


def test_an_installed_wheel_builds_a_pack_from_another_folder(installed: Packs) -> None:
    assert installed.wheel_module.keys() >= EXPECTED


def test_an_installed_wheel_starts_a_plan_from_an_example(installed: Packs) -> None:
    assert installed.started == installed.started_in_checkout
    assert installed.started.keys() == {"fixtures.ics", "plan.yaml", "plan.schema.json"}


def test_wheel_and_checkout_build_the_same_pack(installed: Packs) -> None:
    assert installed.editable_module == installed.wheel_module

"""The importer that the tablet starts with finds what zipimport finds, and reads it once."""

import json
import py_compile
import subprocess
import sys
import zipfile

import pytest

from building.python_zips import FIRST

MODULES = {"one.py": "", "two/__init__.py": "", "two/part.py": "import two", "spread/three.py": ""}
SCRIPT = """
import json, sys, zipimport
reads = []
if {with_ours}:
    import sitecustomize
whole = zipimport._get_data
zipimport._get_data = lambda archive, entry: reads.append(entry[0]) or whole(archive, entry)
import one, two.part, spread.three
found = {{name: [module.__file__, list(getattr(module, "__path__", []))] for name, module in sys.modules.items()
         if name in ("one", "two", "two.part", "spread.three")}}
print(json.dumps({{"found": found, "reads": len(reads)}}))
"""


@pytest.fixture(scope="module")
def archive(tmp_path_factory):
    folder = tmp_path_factory.mktemp("zip")
    with zipfile.ZipFile(folder / "modules.zip", "w") as archive:
        archive.mkdir("spread")  # Python before 3.13 wants to be told of a folder without __init__
        for name, source in {**MODULES, "sitecustomize.py": FIRST.read_text()}.items():
            (folder / "source.py").write_text(source)
            archive.write(py_compile.compile(str(folder / "source.py"), str(folder / "compiled")), name + "c")
    return folder / "modules.zip"


def imported(archive, with_ours):
    script = SCRIPT.format(with_ours=with_ours)
    command = [sys.executable, "-S", "-c", f"import sys; sys.path.insert(0, {str(archive)!r})\n{script}"]
    return json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


def test_modules_packages_and_folders_are_found_where_zipimport_finds_them(archive):
    assert imported(archive, True)["found"] == imported(archive, False)["found"]


def test_each_module_is_read_once(archive):
    assert imported(archive, True)["reads"] == len(MODULES)

import importlib
import io
import zipfile
import zipimport

import pytest

from building import npm, python_zips
from building.bytecode import compiled_zip


def zipped(**files: str) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for name, text in files.items():
            archive.writestr(name.replace("__", ".").replace("_of_", "/"), text)
    return target.getvalue()


@pytest.fixture
def compiled(tmp_path):
    path = tmp_path / "compiled.zip"
    path.write_bytes(compiled_zip(zipped(answer__py="def f():\n    return 1 / 0\n"), "/lib/x.zip", deflate=True))
    return path


def test_a_compiled_zip_can_be_imported_from(compiled, monkeypatch):
    monkeypatch.syspath_prepend(str(compiled))
    assert importlib.import_module("answer").f.__name__ == "f"


def test_a_traceback_names_the_place_where_the_zip_will_lie(compiled):
    assert zipimport.zipimporter(str(compiled)).get_code("answer").co_filename == "/lib/x.zip/answer.py"


def test_a_compiled_zip_holds_no_source(compiled):
    assert zipfile.ZipFile(compiled).namelist() == ["answer.pyc"]


SAID = '''"""Said."""
from __future__ import annotations
class A:
    """Said."""
    def f(self):
        """Said."""
        assert self, "kept"
        return "said"
'''


def test_docstrings_may_be_left_out_and_nothing_else(tmp_path, monkeypatch):
    path = tmp_path / "bare.zip"
    path.write_bytes(compiled_zip(zipped(bare__py=SAID), "/lib/x.zip", deflate=True, docstrings=False))
    monkeypatch.syspath_prepend(str(path))
    bare = importlib.import_module("bare")
    assert (bare.__doc__, bare.A.__doc__, bare.A.f.__doc__) == (None, None, None)
    assert bare.A().f() == "said"
    with pytest.raises(AssertionError, match="kept"):
        bare.A.f(None)
    assert bare.A.f.__code__.co_firstlineno == 5


def test_what_is_not_python_is_kept_as_it_is():
    compiled = compiled_zip(zipped(page__html="<p>"), "/lib/x.zip", deflate=True)
    assert zipfile.ZipFile(io.BytesIO(compiled)).read("page.html") == b"<p>"


def test_the_order_of_the_sources_does_not_matter():
    one = compiled_zip(zipped(a__py="x = 1", b__py="y = 2"), "/lib/x.zip", deflate=True)
    other = compiled_zip(zipped(b__py="y = 2", a__py="x = 1"), "/lib/x.zip", deflate=True)
    assert one == other


def test_compiling_in_pyodide_repeats_bit_for_bit(dist, tmp_path):
    sources = python_zips.BUILD / "own-sources.zip"
    again = tmp_path / "again.zip"
    npm.run_node(python_zips.compile_command(sources, again, python_zips.APP_MOUNT), "compile-again", "Not compiled.")
    assert again.read_bytes() == (python_zips.BUILD / "own.zip").read_bytes()


def test_the_bytecode_is_of_the_interpreter_we_ship(dist):
    own = zipfile.ZipFile(python_zips.BUILD / "own.zip")
    shipped = zipfile.ZipFile(python_zips.STDLIB)
    assert own.read("core/__init__.pyc")[:4] == shipped.read("enum.pyc")[:4]

"""Compile a zip of Python sources to a zip of bytecode. Runs inside the Pyodide we ship (see bytecode.mjs).

Standard library only, and nothing of this repository: the same file is read by CPython's tests and by Pyodide. The
`.pyc` are hash-based and unchecked, times are fixed and names are in order, so that the same sources give the same
bytes.
"""

import ast
import io
import marshal
import zipfile
from importlib.util import MAGIC_NUMBER, source_hash

FIXED_TIME = (1980, 1, 1, 0, 0, 0)
DOCUMENTED = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)


def compiled_zip(archive: bytes, mount: str, *, deflate: bool, docstrings: bool = True) -> bytes:
    """`archive` with every .py as .pyc. `mount`: where the zip will lie, for the file names in tracebacks."""
    target = io.BytesIO()
    method = zipfile.ZIP_DEFLATED if deflate else zipfile.ZIP_STORED
    with zipfile.ZipFile(io.BytesIO(archive)) as source, zipfile.ZipFile(target, "w", method) as compiled:
        for name in sorted(source.namelist()):
            data = source.read(name)
            if name.endswith(".py"):
                name, data = name + "c", bytecode(data, f"{mount}/{name}", docstrings)
            add(compiled, name, data, method)
    return target.getvalue()


def bytecode(source: bytes, path: str, docstrings: bool) -> bytes:
    """A .pyc as PEP 552 lays it out, by the source's hash and unchecked: magic, flags, hash, code."""
    code = compile(source if docstrings else _undocumented(source), path, "exec", dont_inherit=True)
    return MAGIC_NUMBER + (1).to_bytes(4, "little") + source_hash(source) + marshal.dumps(code)


def _undocumented(source: bytes) -> ast.Module:
    """`optimize=2` would take out the assertions as well."""
    tree = ast.parse(source)
    for each in ast.walk(tree):
        if isinstance(each, DOCUMENTED) and ast.get_docstring(each, clean=False) is not None:
            said = each.body.pop(0)
            if not each.body and not isinstance(each, ast.Module):
                each.body.append(ast.copy_location(ast.Pass(), said))
    return tree


def add(archive: zipfile.ZipFile, name: str, data: bytes, method: int = zipfile.ZIP_DEFLATED) -> None:
    """A file with nothing in it that differs from one day or machine to the next."""
    info = zipfile.ZipInfo(name, FIXED_TIME)
    info.compress_type = method
    info.external_attr = 0o644 << 16
    info.create_system = 3
    archive.writestr(info, data, compresslevel=9)

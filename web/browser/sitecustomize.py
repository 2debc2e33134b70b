"""Python reads this before all else, in the tablet only: modules in our zips are read once instead of twice.

zipimport unpacks and unmarshals a whole module only to ask for its file's name, and then again to run it; with some
350 modules that is a tenth of the start. Everything used here is zipimport's public interface.
"""

import sys
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_file_location
from types import ModuleType
from zipimport import ZipImportError, zipimporter


class ReadingOnce(zipimporter):
    def find_spec(self, fullname: str, target: ModuleType | None = None) -> ModuleSpec | None:
        try:
            is_package = self.is_package(fullname)
        except ZipImportError:
            return super().find_spec(fullname, target)
        path = f"{self.archive}/{self.prefix}{fullname.rpartition('.')[2]}"
        file, inside = (f"{path}/__init__.pyc", [path]) if is_package else (f"{path}.pyc", None)
        return spec_from_file_location(fullname, file, loader=self, submodule_search_locations=inside)


sys.path_hooks.insert(0, ReadingOnce)
sys.path_importer_cache.clear()

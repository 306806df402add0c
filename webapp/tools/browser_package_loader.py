"""What is shipped as pyodide._package_loader: the little of it that Pyodide's start asks for.

The rest installs packages, which here are all in place, and brings in archives and temporary files.
"""


class _Place:
    def __init__(self, path):
        self._path = path

    def __str__(self):
        return self._path


SITE_PACKAGES = _Place("/lib/python3.12/site-packages")
DSO_DIR = _Place("/usr/lib")


def init_loaded_packages():
    """Nothing to tell: no package comes with a record of its installation."""

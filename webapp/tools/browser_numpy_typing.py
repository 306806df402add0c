"""What is shipped as numpy._typing: the one name that numpy itself needs at run time.

The rest are types for annotations, which nobody reads in a browser, and building them is a
twentieth of numpy's import.
"""

from numpy._core import ndarray as NDArray  # noqa: F401, N812

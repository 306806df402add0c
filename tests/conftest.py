"""Property tests draw the same examples every time, so that a run can be trusted to repeat.

To search for new ones:  HYPOTHESIS_PROFILE=search pytest …
"""

from __future__ import annotations

import os

from hypothesis import settings

settings.register_profile("same", derandomize=True, database=None)
settings.register_profile("search", print_blob=True)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))

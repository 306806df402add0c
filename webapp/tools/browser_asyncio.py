"""What is shipped as asyncio/__init__: only that part of it on which Pyodide's own loop stands.

The rest (sockets, TLS, pipes, child processes, queues) cannot run in a browser's worker, and its
import is a tenth of the start. The kernel itself never waits for anything.
"""

from .coroutines import *  # noqa: F403
from .events import *  # noqa: F403
from .events import BaseDefaultEventLoopPolicy as DefaultEventLoopPolicy  # noqa: F401
from .events import _set_running_loop  # noqa: F401
from .exceptions import *  # noqa: F403
from .futures import *  # noqa: F403
from .runners import run  # noqa: F401
from .tasks import *  # noqa: F403

"""What is shipped as pyodide.webloop: no loop of events, since the kernel waits for nothing."""


def _initialize_event_loop():
    """Nothing to begin."""

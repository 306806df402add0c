"""What is shipped as asyncio: the name alone, which Pyodide asks for.

The kernel never waits for anything, and to read the package is a tenth of the start.
"""

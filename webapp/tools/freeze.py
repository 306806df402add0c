"""Run inside Pyodide: let micropip resolve the kernel's wheel and write the frozen lock.

Arguments: the file to write, then every wheel to install (the kernel's own, and those of its
needs that Pyodide does not carry).
"""

# ruff: noqa: F704
import micropip

target, *wheels = argv  # noqa: F821
await micropip.install([f"emfs:{wheel}" for wheel in wheels])
with open(target, "w") as file:
    file.write(micropip.freeze())

"""Lights: one reading, its stand-in spectrum, and many of them together."""

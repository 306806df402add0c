"""Gels: one transmittance, the named kit, and the search for a pack."""

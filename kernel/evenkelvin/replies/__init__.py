"""What several answers hold in common, as plain data."""

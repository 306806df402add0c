"""A surface read point by point: how even it is, and which lamp makes it so."""

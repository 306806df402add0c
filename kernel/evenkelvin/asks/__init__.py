"""One file an ask: JSON fields in, kernel types between, plain data out."""

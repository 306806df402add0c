"""What a spectrum or a chromaticity is, and how far two of them are apart."""

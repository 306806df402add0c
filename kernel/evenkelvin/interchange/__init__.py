"""What comes in and goes out: spectra in files, the book, links, reports."""

"""Pages: those that are made from data, and what is put into those that are written."""

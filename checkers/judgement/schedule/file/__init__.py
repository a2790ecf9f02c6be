"""A schedule's file: bytes to text, text to lines, lines to records, records to columns."""

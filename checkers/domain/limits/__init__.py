"""Limit tables: when a row applies, which rows answer a question on a day, and their words."""

"""Readings of several visits: trends, due dates and the calendar."""

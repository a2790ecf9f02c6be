"""Whose work the site holds, and under which licences."""

"""A judged schedule handed out as a table, a page or an object."""

"""How long a visitor waits for the first verdict, here and on a page that does nothing special."""

"""Everything that makes, serves and checks the site; `checkers` knows nothing of it."""

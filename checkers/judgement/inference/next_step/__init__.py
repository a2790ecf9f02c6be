"""What to test or look at next: each with its outcomes, and the one that tells most."""

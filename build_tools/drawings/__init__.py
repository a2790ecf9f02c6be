"""Pictures drawn from the data and models that the verdicts rest on, one a file."""

"""One module a command; each has `run(arguments)`, which gives the exit status."""

"""The command line: requests as flags or files in, replies as text that a person reads."""

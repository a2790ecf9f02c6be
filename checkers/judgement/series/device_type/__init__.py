"""Whether each device of an arrangement is of a type that suits what hangs on it."""

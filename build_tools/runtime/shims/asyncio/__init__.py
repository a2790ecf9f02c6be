"""Stands in for the library's package: the page asks and Python answers, nothing is awaited.

The runtime's core imports it at its start, with sockets, subprocesses, threads and logging.
"""

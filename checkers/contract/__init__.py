"""The public contract: requests as JSON in, replies as JSON out, also for a browser."""

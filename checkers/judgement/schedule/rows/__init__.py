"""The rows of a schedule: read, judged, put in the order of danger, and summed up."""

"""What the cells of a schedule say: readings, days and descriptions of devices."""

"""Connected equipment: its circuits, what it leaks, and the device types it calls for."""

"""An earth electrode with its device: touch voltages and the time to disconnection."""

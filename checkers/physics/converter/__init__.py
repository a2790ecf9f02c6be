"""Earth faults in converter circuits: the current stepped through time, and its waveform."""

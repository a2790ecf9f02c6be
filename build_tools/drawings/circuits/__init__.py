"""Pictures of circuits: converters, devices, links and instruments, joined by conductors."""

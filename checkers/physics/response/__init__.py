"""What an instrument would show for one test of a device in a given condition."""

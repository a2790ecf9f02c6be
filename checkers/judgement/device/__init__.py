"""All readings of one device together: what they contradict, leave open, and come to."""

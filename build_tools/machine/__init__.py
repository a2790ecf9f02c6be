"""What the machine has or is given: Python, node, a browser; and how programs are started."""

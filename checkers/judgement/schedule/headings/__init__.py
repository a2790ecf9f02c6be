"""What the headings of a schedule mean, and the words that say so."""

"""What a checker is asked: typed fields, the request read into them, and what was left out."""

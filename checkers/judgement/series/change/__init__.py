"""Changes that can mend an arrangement: what there is to change, and the least that helps."""

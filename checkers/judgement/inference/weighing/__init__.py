"""How likely each cause is, by what the readings show of its possible conditions."""

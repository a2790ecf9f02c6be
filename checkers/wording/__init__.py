"""Every sentence of a finding, by its code: the one place that turns what was judged into words."""

"""Files and folders: where they lie, what a result was made from, archives, compression, types."""

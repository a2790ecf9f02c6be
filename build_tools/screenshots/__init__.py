"""Pictures of the site's key pages, to be looked over: which, how they are taken, and the sheet."""

"""Macros of pages: what `<!-- show KIND ... -->` stands for, a module a subject."""

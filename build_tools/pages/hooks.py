"""The only file that knows MkDocs: each event hands text to plain functions and takes text back.

A build goes: the settings learn of our scripts and of the pages made from data; the made pages
join the written ones; what a page asks to be shown is filled in; each page gets its cautions;
last, every page gets its policy.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page

from build_tools.pages import all_pages
from build_tools.pages.lost_page import write_lost_page
from build_tools.pages.marks import fill_in
from build_tools.pages.search_words import search_words
from build_tools.site import browser_files, integrity, policy
from build_tools.theme.accessibility import repaired
from build_tools.theme.keys import mend_keys
from build_tools.theme.search import mend_search
from build_tools.theme.start import mend_start, waiting
from build_tools.theme.storage import refusable
from build_tools.theme.unused_files import leave_out


def on_config(config: MkDocsConfig) -> None:
    """Before anything is read: our styles, and the made pages' places in the navigation."""
    config.extra_css.extend(browser_files.styles())
    config.nav = all_pages.whole_navigation(config.nav, Path(config.docs_dir))


def on_files(files: Files, config: MkDocsConfig) -> None:
    """When the written files are known: add the made pages, and the browser's files."""
    for place, content in all_pages.made_files(Path(config.docs_dir)).items():
        files.append(File.generated(config, place, content=content))


def on_page_markdown(markdown: str, page: Page, **_: Any) -> None:
    """When a page has been read: what people type to find it, which the search ranks highest."""
    if words := search_words(markdown):
        page.meta["tags"] = words


def on_page_content(html: str, page: Page, **_: Any) -> str:
    """When Markdown has become HTML, which leaves our marks alone: fill them in."""
    return fill_in(html, all_pages.MACROS, all_pages.way_to_root(page.url))


def on_page_context(
    context: dict[str, Any], page: Page, config: MkDocsConfig, nav: Navigation
) -> None:
    """Before a page meets its template: what stands on every page."""
    del config, nav
    context["foot"] = all_pages.foot(page.file.src_uri, page.url)
    context["first_checker"] = browser_files.first_checker(page.content or "")
    context["entry"] = browser_files.entry()
    context["worker"] = browser_files.worker()
    context["theme_script"] = waiting
    # The theme would name both for browsers that fetch ahead: Firefox does, against our policy.
    page.previous_page = page.next_page = None


def on_post_page(output: str, **_: Any) -> str:
    """When a page has met its template: mend what the theme leaves out."""
    return refusable(repaired(output))


def on_post_build(config: MkDocsConfig) -> None:
    """When all pages are written: mend the theme, bind their scripts, allow no others."""
    site = Path(config.site_dir)
    mend_search(site)
    mend_keys(site)
    mend_start(site)
    leave_out(site)
    write_lost_page(site, config.site_name)  # over the one that the theme makes
    integrity.bind(site)
    policy.protect(site)

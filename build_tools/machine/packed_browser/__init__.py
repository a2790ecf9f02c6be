"""A Chromium that npm carries whole: fetched and unpacked where the machine has no browser."""

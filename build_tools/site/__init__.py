"""The site as a whole: scripts, policy, offline copy, the build, and a server."""

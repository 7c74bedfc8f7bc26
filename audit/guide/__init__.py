"""The manual: pages of plain Markdown that come with the package, read offline."""

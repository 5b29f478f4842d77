"""Reports as Markdown."""

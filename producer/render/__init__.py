"""Floor 3: the only Jinja environments, Markdown, prose with figures by reference, pictures and PDF through Typst."""

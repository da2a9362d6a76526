"""Floor 2: YAML text to records with places, and back."""

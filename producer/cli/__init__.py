"""Floor 6: arguments, printing, exit codes."""

"""Test laps: reading them, pace and falloff, two setups compared, what the tyres say."""

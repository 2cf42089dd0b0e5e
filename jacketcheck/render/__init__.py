"""Output only: formats what the engine found and computes nothing."""

"""Pictures: words and ink. This room decides nothing."""

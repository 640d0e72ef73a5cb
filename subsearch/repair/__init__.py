"""The bench: one repair's folder, what its positions ask, what was chosen and why, and the cautions it calls for."""

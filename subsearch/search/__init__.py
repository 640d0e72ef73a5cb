"""Questions: what is asked, how it is answered, in what order the answers are offered."""

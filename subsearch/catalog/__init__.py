"""Facts: what makers and suppliers print. The only room that opens or writes the database."""

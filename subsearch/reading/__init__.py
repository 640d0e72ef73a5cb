"""What is written: what a text says, with the piece it came from and the doubts."""

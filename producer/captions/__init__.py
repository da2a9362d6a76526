"""Floor 2: captions - words shown on the screen, their lines, their time, and the files that hold them."""

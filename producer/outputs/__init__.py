"""Floor 4: one file per output, found by this folder. `documents(dossier, kit)` gives the files of one episode."""

"""Layout: sheet templates become sheets of cells; each line gets its one home. Pure: no spreadsheet library here."""

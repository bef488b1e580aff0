"""The workbook stays live: any input edited in it gives what the engine gives for the same edit."""

"""What a section of a model may declare, and models made of sections."""

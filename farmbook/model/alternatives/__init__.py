"""The farm once more with something changed, worked out as a whole: another stop, recipe or steamer, a change of the grower's."""

"""What rests on the whole year: an offer for volume, a lost bag with its crop, an hour that is missing."""

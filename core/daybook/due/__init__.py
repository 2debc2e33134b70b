"""What is to be done now, a line each: in the batches, in the salt, in the chamber, with instruments."""

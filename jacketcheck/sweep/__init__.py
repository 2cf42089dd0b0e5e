"""Many designs that differ in a few fields, evaluated all at once."""

"""The lightest and quickest jackets that work, within bounds."""

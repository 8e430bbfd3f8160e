"""Programs for a mill with numerical control: the flutes and the square of a tap."""

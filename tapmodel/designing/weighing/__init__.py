"""What a rule chose, weighed by what the tap will do in the hole."""

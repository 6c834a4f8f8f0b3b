"""What can go wrong between a person and the store: others who write, power that fails, a disk."""

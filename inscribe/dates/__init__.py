"""What a carved date says, which days it names, and whether it agrees with itself."""

"""What a station and an instructor's desk say to each other."""

"""Where temperatures come from: loggers' files and sensors, each read with suspicion."""

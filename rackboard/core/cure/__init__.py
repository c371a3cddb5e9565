"""The cure model: what a glued joint may bear, from its sheet and the recorded temperature."""

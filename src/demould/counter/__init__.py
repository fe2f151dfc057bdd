"""The doors: text in, commands, paper."""

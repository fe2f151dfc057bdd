"""YAML to and from the tree of `mise`."""

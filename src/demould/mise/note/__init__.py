"""A note off the wall: its words found, put together, and none of them dropped."""

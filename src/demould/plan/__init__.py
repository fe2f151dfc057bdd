"""When, and by whom?"""

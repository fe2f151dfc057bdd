"""What is it made of, how does it behave?"""

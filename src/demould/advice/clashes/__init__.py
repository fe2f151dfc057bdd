"""Ingredients and steps that fight, and what to do instead."""

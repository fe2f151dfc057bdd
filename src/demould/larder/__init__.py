"""What is known: ingredients, bands, holds and films, each with its source."""

"""Sheets to PDF."""

"""Mixing day."""

"""The chamber: its air, its water, and what proves that it can be trusted."""

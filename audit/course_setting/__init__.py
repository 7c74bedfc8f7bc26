"""The course setter's check: whether lanes are alike, apart from each other, and safe."""

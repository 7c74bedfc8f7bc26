"""Which way the compass points: declination by the World Magnetic Model of the day."""

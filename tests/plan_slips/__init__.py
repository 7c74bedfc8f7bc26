"""Plans made right and then spoilt by one slip each: what a check finds of it."""

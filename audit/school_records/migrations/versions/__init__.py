"""One file a migration; what has been released is never changed."""

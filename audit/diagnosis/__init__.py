"""Why a leg went wrong: evidence to hypotheses to findings."""

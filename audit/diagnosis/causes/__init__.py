"""The causes, one file each. A cause counts only when it stands in this tuple."""

from __future__ import annotations

from audit.diagnosis.cause import DirectionCause
from audit.diagnosis.causes.declination_for_gm_angle import CAUSE as _DECLINATION
from audit.diagnosis.causes.gm_angle_doubled import CAUSE as _DOUBLED
from audit.diagnosis.causes.gm_angle_omitted import CAUSE as _OMITTED
from audit.diagnosis.causes.gm_angle_reversed import CAUSE as _REVERSED

DIRECTION_CAUSES: tuple[DirectionCause, ...] = (_OMITTED, _REVERSED, _DOUBLED, _DECLINATION)

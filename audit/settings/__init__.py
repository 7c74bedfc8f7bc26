"""Every threshold: its unit, its default, and where the number is from.

"Chosen" marks a value picked by trial on simulated walks, with what it trades off.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from audit.settings.card_checks import CardSettings
from audit.settings.carrying import CarriedCardSettings, PacingSettings
from audit.settings.class_shows import ClassShowsSettings
from audit.settings.cleaning import CleaningSettings
from audit.settings.coaching import CoachingSettings
from audit.settings.course_setting import CourseSettingSettings
from audit.settings.diagnosis import DiagnosisSettings
from audit.settings.forecast import ForecastSettings
from audit.settings.grading import GradingSettings
from audit.settings.line_shapes import LineShapeSettings
from audit.settings.matching import MatchingSettings
from audit.settings.measuring import (
    AsideSettings,
    ClaimSettings,
    GroundSettings,
    HeadingSettings,
    MeasuringSettings,
    NoiseSettings,
    PaceSettings,
    SearchSettings,
    SlantSettings,
)
from audit.settings.quality import QualitySettings
from audit.settings.readers import ReadingSettings
from audit.settings.rehearsal import RehearsalSettings
from audit.settings.reports import ReportSettings
from audit.settings.school_records import RecordsSettings

__all__ = [
    "AsideSettings",
    "CardSettings",
    "CarriedCardSettings",
    "ClaimSettings",
    "ClassShowsSettings",
    "CleaningSettings",
    "CoachingSettings",
    "CourseSettingSettings",
    "DiagnosisSettings",
    "ForecastSettings",
    "GradingSettings",
    "GroundSettings",
    "HeadingSettings",
    "LineShapeSettings",
    "MatchingSettings",
    "MeasuringSettings",
    "NoiseSettings",
    "PaceSettings",
    "PacingSettings",
    "QualitySettings",
    "ReadingSettings",
    "RecordsSettings",
    "RehearsalSettings",
    "ReportSettings",
    "SearchSettings",
    "Settings",
    "SlantSettings",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """All thresholds of the package, by stage."""

    reading: ReadingSettings = field(default_factory=ReadingSettings)
    cleaning: CleaningSettings = field(default_factory=CleaningSettings)
    matching: MatchingSettings = field(default_factory=MatchingSettings)
    heading: HeadingSettings = field(default_factory=HeadingSettings)
    measuring: MeasuringSettings = field(default_factory=MeasuringSettings)
    aside: AsideSettings = field(default_factory=AsideSettings)
    slants: SlantSettings = field(default_factory=SlantSettings)
    diagnosis: DiagnosisSettings = field(default_factory=DiagnosisSettings)
    quality: QualitySettings = field(default_factory=QualitySettings)
    card: CardSettings = field(default_factory=CardSettings)
    coaching: CoachingSettings = field(default_factory=CoachingSettings)
    reports: ReportSettings = field(default_factory=ReportSettings)
    noise: NoiseSettings = field(default_factory=NoiseSettings)
    claim: ClaimSettings = field(default_factory=ClaimSettings)
    search: SearchSettings = field(default_factory=SearchSettings)
    ground: GroundSettings = field(default_factory=GroundSettings)
    paces: PaceSettings = field(default_factory=PaceSettings)
    forecast: ForecastSettings = field(default_factory=ForecastSettings)
    grading: GradingSettings = field(default_factory=GradingSettings)
    course_setting: CourseSettingSettings = field(default_factory=CourseSettingSettings)
    rehearsal: RehearsalSettings = field(default_factory=RehearsalSettings)
    carried_card: CarriedCardSettings = field(default_factory=CarriedCardSettings)
    pacing: PacingSettings = field(default_factory=PacingSettings)
    class_shows: ClassShowsSettings = field(default_factory=ClassShowsSettings)
    records: RecordsSettings = field(default_factory=RecordsSettings)

"""What a file may say, how large it may be, and what is taken for a slip."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingSettings:
    """What a plan may say. Beyond these limits a value is taken for a slip and refused."""

    paces_per_100m_low: float = 30.0
    paces_per_100m_high: float = 250.0
    """Half and nearly double of 62 double and 148 single paces (STP 21-1-SMCT; common practice)."""
    longest_leg_m: float = 100_000.0
    """Nobody walks one leg of more; chosen: tells 1.25 m from 1250 km, costs no real leg."""
    most_paces: float = 250_000.0
    """The longest leg at the highest pace count."""
    arrival_radius_m: float = 30.0
    """Where the plan gives none (as in the example of the plan format); chosen: a marker seen
    through trees."""
    largest_arrival_radius_m: float = 1_000.0
    """Chosen: a point found from a kilometre away is not found."""
    same_place_m: float = 1.0
    """Points nearer than this (and than half their squares) are one place; chosen: below what
    any receiver or map tells apart."""
    coarse_half_square_m: float = 500.0
    """A reference to a square this large gets a note; chosen: a square of 1 km, four digits."""
    largest_half_square_m: float = 50_000.0
    """A place known no better than to a square of 100 km; chosen: the largest that MGRS names."""
    largest_half_step_deg: float = 5.0
    largest_half_step_m: float = 500.0
    """Half steps of numbers converted from another grid: ten degrees, a kilometre; chosen: nobody
    writes an azimuth or a distance more coarsely."""
    near_origin_m: float = 1_000.0
    """Grid coordinates both smaller than this are no grid coordinates; chosen: the origins of
    grids lie outside the country they serve."""
    band_slack_deg: float = 0.02
    """By how much a UTM northing may miss its band; chosen: 2 km, a point on the band's edge."""
    two_scales_slack_deg: float = 0.6
    """By how much an azimuth given in degrees and in mils may differ; chosen: half a degree and
    5 mils of rounding, 0.5 + 0.3, less what rounding both ways at once makes unlikely."""
    grid_scale_slack: float = 0.03
    """A grid that makes lengths at a point longer or shorter by more than this share is not
    the grid of the course; chosen: continental grids stay within 2 %, their own area."""
    most_free_points: int = 15
    """Of points in free order beside the start; chosen: all orders of so many can be weighed."""
    most_points: int = 400
    """Of points, and of legs, in a plan; chosen: some times a long course, and far below a track.
    Legs are weighed against each other: 450 of them take 51 s of a processor and 1.3 GB, twice
    as many four times that."""
    most_area_corners: int = 20_000
    """Of all areas of a file; chosen: a shore in every detail, and still quick."""
    most_points_beside: int = 20_000
    """Of points in a GPX file of which a route is picked; chosen: all marks of a device."""
    largest_plan_bytes: int = 64_000_000
    """Chosen: three times the largest recording at hand; a plan is far smaller."""
    largest_track_bytes: int = 1_000_000_000
    """Of a recording once unpacked; chosen: some 100 days at one fix a second."""
    deepest_element: int = 100
    """XML nested deeper wants to fill the memory; chosen: recordings nest up to 8 deep."""
    largest_token_bytes: int = 400_000
    """One tag, comment or instruction of XML; chosen: recordings have tags of some hundred bytes,
    and the parser takes time that grows with the square of this."""
    most_element_names: int = 2_000
    """Different names of elements in one file; chosen: recordings have up to 40."""
    most_elements: int = 3_000_000
    """Of XML that is read as a plan; chosen: three days of recording beside a route."""
    most_fixes: int = 2_000_000
    """Of a recording; chosen: 23 days at one fix a second."""
    most_swelling: float = 200.0
    """Unpacked bytes for a packed one; chosen: real recordings swell up 5 to 30 times, gzip can
    make it 1000."""
    small_packed_bytes: int = 50_000_000
    """Whatever this was packed into does no harm; chosen."""
    longest_element_text: int = 10_000
    """Signs kept of a name, a time or a number in a recording; chosen: no such text is longer."""
    largest_text_bytes: int = 4_000_000
    """Of a plan, log or settings file in text; chosen: ten times one of 1000 legs with notes."""
    most_full_stops: int = 100
    """In what may be a dotted key of TOML; chosen: a plan has none, and the parser takes time with
    the square of it, 95 s for one of 100 kB."""
    map_years: tuple[int, int] = (1900, 2200)
    """First and last year that a map may give its grid-magnetic angle for; chosen: what is beyond
    is a slip of a digit."""
    most_problems: int = 100
    """Told of one file; chosen: nobody reads more before putting right the first."""
    most_notes: int = 5_000
    """Made of one file; chosen: some for each point or leg that a plan can have."""
    furthest_elevation_m: float = 20_000.0
    """Of a fix from the ellipsoid; chosen: twice the highest mountain, no walker's."""
    largest_reading: float = 10_000.0
    """Of a dilution of precision or a cadence; chosen: what is larger is a slip of the file."""
    most_raster_cells: int = 100_000_000
    """Of a raster on the ground of one course, and in one block of it; chosen: 10 km by 10 km in
    cells of a metre."""
    ground_px: int = 1100
    """Longer side of the picture under the map; chosen: sharp on a phone and on paper, and some
    hundred kilobytes."""
    ground_strength: float = 0.55
    """Share of its own colour that the picture keeps, the rest is white; chosen: the plan's
    black and the walker's blue stay readable on it."""
    ground_jpeg_quality: int = 60
    """Chosen: no smear that hides a contour, half the size of 80."""

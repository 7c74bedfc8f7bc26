"""debrief.html in motion: cursor, zoom, keys, touch; still without scripts and on paper."""

from __future__ import annotations

from contextlib import contextmanager
from pathlib import Path

import pytest
from reports.sample_debrief import sample_debrief

from audit.reports.html_report import render_html

LIVE = "[data-kind]"


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    path = tmp_path_factory.mktemp("page") / "debrief.html"
    path.write_text(render_html(sample_debrief()), encoding="utf-8")
    return path


@contextmanager
def opened(chrome, path, width=1200, **more):
    context = chrome.new_context(viewport={"width": width, "height": 900}, **more)
    page = context.new_page()
    page.told = []
    page.on("console", lambda message: page.told.append(message.text))
    page.on("pageerror", lambda error: page.told.append(str(error)))
    page.asked = []
    page.on("request", lambda request: page.asked.append(request.url))
    page.goto(path.as_uri())
    try:
        yield page
    finally:
        context.close()


@pytest.fixture
def page(chrome, path):
    with opened(chrome, path) as page:
        bring_all(page)
        yield page


def bring_all(page):
    """Scroll through, since pictures come to life only near the window.

    Bug: the library's own scrolling waits for a picture to stand still, by frames that a busy
    machine did not draw for half a minute.
    """
    for number, element in enumerate(page.query_selector_all(LIVE)):
        element.evaluate("element => element.scrollIntoView({block: 'center'})")
        for _ in range(600):  # the page's policy forbids the library's own way of waiting
            if page.locator(".live[data-cursor] svg").count() > number:
                break
            page.wait_for_timeout(100)
        else:
            pytest.fail("the pictures did not come to life")


def cursors(page) -> dict:
    """Where the ring stands in each picture, as the script put it."""
    return page.evaluate(
        "() => Object.fromEntries([...document.querySelectorAll('[data-picture]')].map("
        "e => [e.dataset.picture, JSON.parse(e.querySelector('.live').dataset.cursor)]))"
    )


def test_nothing_is_asked_for_and_nothing_goes_wrong(page):
    page.wait_for_timeout(200)
    assert [url for url in page.asked if not url.startswith(("file:", "blob:", "data:"))] == []
    assert page.asked[0].startswith("file:")
    assert len(page.asked) == 1
    assert page.told == []
    assert page.locator(".moving").count() == page.locator(LIVE).count() == 5
    # Whoever has the page read to them still meets every picture with its words.
    assert page.get_by_role("img").count() == 12
    assert page.get_by_role("img", name="Map of").count() == 1


def test_network_is_refused_by_the_page_itself(page):
    """The policy holds even for a script that the page does run."""
    refused = page.evaluate(
        "() => fetch('https://example.org/').then(() => 'let out', () => 'refused')"
    )
    assert refused == "refused"
    assert any("Content Security Policy" in line for line in page.told)


def test_slider_moves_the_ring_in_all_pictures(page):
    debrief = sample_debrief()
    measures = debrief.legs[1].audit.measures
    start_s = float(debrief.clean.time_s[0])
    middle_s = (measures.start.time_s + measures.claim.time_s) / 2 - start_s
    page.evaluate(
        "s => {const e = document.getElementById('moment'); e.value = s;"
        " e.dispatchEvent(new Event('input'))}", round(middle_s)
    )  # fmt: skip
    at = cursors(page)
    place = debrief.clean.index_at(start_s + middle_s)
    assert at["map"]["x"] == pytest.approx(debrief.clean.east_m[place], abs=8.0)  # metres
    assert at["map"]["y"] == pytest.approx(debrief.clean.north_m[place], abs=8.0)
    assert at["walk"]["x"] == pytest.approx(middle_s, abs=1.0)  # seconds
    assert at["strip1"]["y"] == pytest.approx(at["walk"]["y"], abs=0.01)
    assert at["strip0"] is None
    assert at["strip2"] is None
    told = page.inner_text("#moment-told")
    for words in ("since the start", "UTC", "leg 2", "grid", "planned line", "km/h"):
        assert words in told
    assert page.get_attribute("#moment", "aria-valuetext") == told.replace(" · ", ", ")


def test_ring_is_drawn_where_it_should_be(page):
    page.focus("#moment")
    before = page.locator("[data-picture=map] .live").inner_html()
    for _ in range(60):
        page.keyboard.press("ArrowRight")
    page.wait_for_timeout(100)
    assert page.locator("[data-picture=map] .live").inner_html() != before


def test_pointing_says_time_azimuth_and_offset(page):
    page.locator("[data-picture=walk]").scroll_into_view_if_needed()
    box = page.locator("[data-picture=walk] .live svg").bounding_box()
    page.mouse.move(box["x"] + box["width"] * 0.6, box["y"] + 40)
    first = cursors(page)
    page.mouse.move(box["x"] + box["width"] * 0.7, box["y"] + 40)
    second = cursors(page)
    assert second["walk"]["x"] > first["walk"]["x"]
    assert second["map"] != first["map"]
    page.locator("[data-picture=strip0]").scroll_into_view_if_needed()
    box = page.locator("[data-picture=strip0] .live svg").bounding_box()
    page.mouse.move(box["x"] + box["width"] * 0.5, box["y"] + 50)
    told = page.inner_text("#moment-told")
    assert "leg 1" in told
    assert "° grid" in told


def shown(page) -> str:
    return page.locator("[data-picture=map] .live").get_attribute("data-shown")


def assert_one_scale(page, ground):
    """A metre is as long east as north; ``ground`` is west, east, south and north as shown."""
    west, east, south, north = map(float, ground.split())
    drawn = page.evaluate(
        "() => {const b = document.querySelector('[data-picture=map] .live svg .background')"
        ".getBoundingClientRect(); return b.width / b.height}"
    )
    assert (east - west) / (north - south) == pytest.approx(drawn, rel=0.02)


def test_keys_and_buttons_zoom_and_move_the_map(page):
    page.locator("[data-kind=map]").focus()
    bars = []
    for key in ("+", "+", "+", "ArrowRight", "ArrowUp", "-"):
        page.keyboard.press(key)
        page.wait_for_timeout(80)
        bars.append(shown(page))
    assert len(set(bars)) == len(bars)
    west, east, _, _ = map(float, bars[2].split())
    moved_west, moved_east, *_ = map(float, bars[3].split())
    assert moved_east - moved_west == pytest.approx(east - west, abs=2)
    assert moved_west > west
    assert_one_scale(page, bars[2])
    page.keyboard.press("0")
    assert shown(page) == "whole"
    page.get_by_role("button", name="Closer").click()
    assert shown(page) != "whole"


def test_wheel_scrolls_the_page_and_zooms_only_with_ctrl(page):
    def bar() -> list[str]:
        page.wait_for_timeout(150)
        return page.locator("[data-picture=map] .live text").all_inner_texts()

    page.locator("[data-picture=map]").scroll_into_view_if_needed()
    page.locator("[data-picture=map] .live svg").hover()
    before, top = bar(), page.evaluate("scrollY")
    page.mouse.wheel(0, 200)
    page.wait_for_timeout(300)
    assert page.evaluate("scrollY") > top
    assert bar() == before
    page.locator("[data-picture=map] .live svg").hover()
    page.keyboard.down("Control")
    page.mouse.wheel(0, -400)
    page.keyboard.up("Control")
    assert bar() != before


def test_run_goes_through_the_walk_and_stops_when_told(page):
    page.click("#moment-run")
    page.wait_for_timeout(700)
    assert page.get_attribute("#moment-run", "aria-pressed") == "true"
    assert float(page.input_value("#moment")) > 0
    page.click("#moment-run")
    stopped = page.input_value("#moment")
    page.wait_for_timeout(300)
    assert page.input_value("#moment") == stopped


def test_keyboard_reaches_everything(page):
    page.evaluate("scrollTo(0, 0); document.activeElement.blur()")
    reached = []
    for _ in range(60):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.outerHTML.slice(0, 80)"))
    every = " ".join(reached)
    for sign in ('data-kind="map"', 'data-map-key="+"', 'data-map-key="0"', 'href="#leg1"',
                 'id="moment-run"', 'id="moment"', 'class="wide"'):  # fmt: skip
        assert sign in every


@pytest.mark.parametrize("width", [390, 1200])
def test_axe_finds_nothing_serious(chrome, path, width):
    # axe-core, the rules of WCAG 2.1 A and AA that a program can check.

    import axe_playwright_python

    source = Path(axe_playwright_python.__file__).parent / "axe.min.js"
    with opened(chrome, path, width) as page:
        bring_all(page)
        page.evaluate(source.read_text(encoding="utf-8"))
        found = page.evaluate("axe.run(document).then(r => r.violations)")
        page.evaluate("document.querySelector('h2').style.color = '#eee'")
        broken = page.evaluate("axe.run(document).then(r => r.violations)")
    serious = [
        (one["id"], one["nodes"][0]["html"][:120])
        for one in found
        if one["impact"] in {"serious", "critical"}
    ]
    assert serious == []
    assert "color-contrast" in {one["id"] for one in broken}  # it does look


def test_phone(chrome, path):
    with opened(chrome, path, 390, has_touch=True, is_mobile=True) as page:
        bring_all(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= 390
        assert page.locator("[data-picture=map] .live svg").bounding_box()["width"] <= 390
        page.locator("[data-picture=map]").scroll_into_view_if_needed()
        box = page.locator("[data-picture=map] .live svg").bounding_box()
        before = cursors(page)["map"]
        page.touchscreen.tap(box["x"] + box["width"] * 0.6, box["y"] + box["height"] * 0.3)
        page.wait_for_timeout(100)
        assert cursors(page)["map"] != before
        page.get_by_role("button", name="Closer").tap()
        page.wait_for_timeout(100)
        assert_one_scale(page, shown(page))
        small = page.evaluate(
            "() => [...document.querySelectorAll('button')].filter(b => b.offsetParent &&"
            " Math.min(b.offsetWidth, b.offsetHeight) < 44).length"
        )
        assert small == 0  # fingers need 44 pixels (WCAG 2.5.5)


def test_paper_shows_the_still_pictures(page):
    page.emulate_media(media="print")
    assert page.locator(".still:visible").count() >= 11  # the strips over time are left out
    assert page.locator(".live:visible, .controls:visible").count() == 0


def test_page_without_scripts_is_whole(chrome, path):
    with opened(chrome, path, java_script_enabled=False) as page:
        assert page.locator(".still svg").count() == 12
        assert page.locator(".controls").first.is_hidden()


def test_recording_without_times_moves_too(chrome, tmp_path):
    path = tmp_path / "debrief.html"
    path.write_text(render_html(sample_debrief(timed=False)), encoding="utf-8")
    with opened(chrome, path) as page:
        bring_all(page)
        page.focus("#moment")
        page.keyboard.press("End")
        assert "no times in this recording" in page.inner_text("#moment-told")
        assert page.told == []


def test_names_of_a_file_run_nothing(chrome, tmp_path):
    name = (
        "</script><script>document.title='ran'</script><img src=x onerror=\"document.title='ran'\">"
    )
    path = tmp_path / "evil.html"
    path.write_text(render_html(sample_debrief(names={"Post 7": name})), encoding="utf-8")
    with opened(chrome, path) as page:
        bring_all(page)
        assert page.title() != "ran"
        assert page.told == []

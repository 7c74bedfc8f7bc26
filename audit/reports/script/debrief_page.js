// The page in motion: live pictures over the still ones, one time cursor through all of
// them, zoom by mouse, keys and buttons. Without it the page stays whole, only still.
"use strict";
(() => {
  const read = (id) => JSON.parse(document.getElementById(id).textContent);
  const walk = read("walk-moments");
  const words = read("page-words");
  const shapes = read("chart-shapes");
  const charts = read("charts");
  const live = new Map();
  let now = 0;

  const fill = (text, values) => text.replace(/\{(\w+)\}/g, (_, name) => values[name]);

  // The drawing library, which the page carries packed ----------------------------

  async function unpacked(ident) {
    const letters = atob(document.getElementById(ident).textContent);
    const packed = new Blob([Uint8Array.from(letters, (letter) => letter.charCodeAt(0))]);
    const stream = packed.stream().pipeThrough(new DecompressionStream("gzip"));
    const script = document.createElement("script");
    script.textContent = await new Response(stream).text();
    document.head.append(script);
  }

  const library = unpacked("library");
  library.catch(() => {
    // A browser that cannot unpack it keeps the still pictures, which no control moves.
    for (const one of document.querySelectorAll(".controls")) one.hidden = true;
  });

  function specification(chart) {
    const shape = shapes[chart.shape];
    const filled = (list, key, values) =>
      list.map((one) => (one.name in values ? { ...one, [key]: values[one.name] } : one));
    return {
      ...shape,
      ...chart.size,
      data: filled(shape.data, "values", chart.rows),
      signals: filled(shape.signals, "value", chart.numbers),
    };
  }

  // Moments -----------------------------------------------------------------

  function momentBefore(seconds) {
    let low = 0;
    let high = walk.t.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (walk.t[middle] <= seconds) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  function between(column, place, share) {
    const a = column[place];
    const b = column[Math.min(place + 1, column.length - 1)];
    if (a === null) return null;
    return b === null ? a : a + (b - a) * share;
  }

  function momentAt(seconds) {
    const place = momentBefore(seconds);
    const end = Math.min(place + 1, walk.t.length - 1);
    const length = walk.t[end] - walk.t[place];
    const share = length > 0 ? (seconds - walk.t[place]) / length : 0;
    const value = (name) => between(walk[name], place, share);
    return {
      t: seconds, x: value("x"), y: value("y"), offset: value("o"), along: value("d"),
      speed: value("v"), height: value("h"), azimuth: walk.a[place], leg: walk.l[place],
    };
  }

  function nearest(distance) {
    let best = null;
    let least = Infinity;
    for (let i = 0; i < walk.t.length; i += 1) {
      const one = distance(i);
      if (one !== null && one < least) [best, least] = [i, one];
    }
    return best;
  }

  // What is said of a moment ------------------------------------------------

  function clock(seconds) {
    const whole = Math.round(seconds);
    const two = (number) => String(number).padStart(2, "0");
    return `${Math.floor(whole / 3600)}:${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}`;
  }

  function time(moment) {
    if (!walk.timed) return words.no_time;
    const since = fill(words.since_start, { time: clock(moment.t) });
    if (walk.start_s === null) return since;
    const utc = new Date((walk.start_s + moment.t) * 1000).toISOString().slice(11, 19);
    return `${since} (${utc} UTC)`;
  }

  function azimuth(degrees) {
    const size = Math.round((degrees * words.circle) / 360) % words.circle;
    return String(size).padStart(words.azimuth_digits, "0") + words.angle_sign;
  }

  function said(moment) {
    const parts = [time(moment)];
    if (moment.leg !== null) parts.push(fill(words.leg, { name: walk.legs[moment.leg] }));
    parts.push(
      moment.azimuth === null
        ? words.standing
        : fill(words.going, { azimuth: azimuth(moment.azimuth) }),
    );
    if (moment.offset !== null) {
      const size = Math.round(Math.abs(moment.offset) / words.length_m);
      const side = size === 0 ? words.on_line : moment.offset < 0 ? words.left : words.right;
      parts.push(fill(side, { size: `${size} ${words.length_sign}` }));
    }
    if (moment.speed !== null && moment.azimuth !== null) parts.push(fill(words.speed, { speed: moment.speed.toFixed(1).replace(".", words.decimal) }));
    if (moment.height !== null) parts.push(fill(words.height, { metres: Math.round(moment.height) }));
    return parts;
  }

  // The cursor ---------------------------------------------------------------

  const slider = document.getElementById("moment");
  const telling = document.getElementById("moment-told");

  function placeIn(picture, moment) {
    const kind = picture.kind;
    if (kind === "map") return [{ x: moment.x, y: moment.y }];
    if (kind === "walk") {
      return [{ x: moment.t, y: moment.offset === null ? NaN : moment.offset }];
    }
    if (moment.leg !== picture.leg || moment.offset === null) return [];
    return [{ x: moment.along, y: moment.offset }];
  }

  function show(picture, moment) {
    const rows = placeIn(picture, moment);
    picture.view.data("cursor", rows).runAsync();
    picture.element.dataset.cursor = JSON.stringify(rows[0] || null);
  }

  function moveTo(seconds) {
    now = Math.min(Math.max(seconds, 0), walk.t[walk.t.length - 1]);
    const moment = momentAt(now);
    const parts = said(moment);
    slider.value = now;
    slider.setAttribute("aria-valuetext", parts.join(", "));
    telling.textContent = parts.join(" · ");
    for (const picture of live.values()) show(picture, moment);
  }

  function pointed(picture, event) {
    const drawn = picture.element.querySelector("svg");
    const box = drawn.getBoundingClientRect();
    const scale = box.width / drawn.viewBox.baseVal.width;
    const origin = picture.view.origin();
    const across = (event.clientX - box.left) / scale - origin[0];
    const down = (event.clientY - box.top) / scale - origin[1];
    const x = picture.view.scale(picture.across).invert(across);
    if (picture.kind === "walk") return moveTo(x);
    if (picture.kind === "map") {
      const y = picture.view.scale("y").invert(down);
      const place = nearest((i) => Math.hypot(walk.x[i] - x, walk.y[i] - y));
      return place === null ? undefined : moveTo(walk.t[place]);
    }
    const place = nearest((i) => (walk.l[i] === picture.leg && walk.d[i] !== null
      ? Math.abs(walk.d[i] - x) : null));
    return place === null ? undefined : moveTo(walk.t[place]);
  }

  // Zoom and pan of the map ----------------------------------------------------

  function showGround(map, [x, y]) {
    return map.view.signal("zoom_x", x).signal("zoom_y", y).runAsync();
  }

  function zoomBy(factor, right = 0, up = 0) {
    const map = live.get("map");
    if (!map) return;
    const domains = ["x", "y"].map((name) => map.view.scale(name).domain());
    const width = domains[0][1] - domains[0][0];
    if (factor < 1 && width < 60) return;
    if (factor > 1 && width > 8 * map.whole) return;
    const next = domains.map(([low, high], i) => {
      const shift = (high - low) * (i === 0 ? right : up);
      const middle = (low + high) / 2 + shift;
      const half = ((high - low) / 2) * factor;
      return [middle - half, middle + half];
    });
    showGround(map, next);
    map.element.dataset.shown = next.flat().map(Math.round).join(" ");
  }

  function zoomOut() {
    const map = live.get("map");
    if (!map) return;
    showGround(map, map.home);
    map.element.dataset.shown = "whole";
  }

  const STEP = 1.5;
  const moves = {
    "+": () => zoomBy(1 / STEP), "=": () => zoomBy(1 / STEP), "-": () => zoomBy(STEP),
    "0": zoomOut, ArrowLeft: () => zoomBy(1, -0.2), ArrowRight: () => zoomBy(1, 0.2),
    ArrowUp: () => zoomBy(1, 0, 0.2), ArrowDown: () => zoomBy(1, 0, -0.2),
  };

  // Live pictures ----------------------------------------------------------------

  function fitMap(picture) {
    // The map is drawn at the width there is, so that its words keep their size.
    const view = picture.view;
    const beside = picture.element.querySelector("svg").viewBox.baseVal.width - view.width();
    const width = Math.max(240, picture.element.clientWidth - beside);
    const [west, east] = view.scale("x").domain();
    const [foot, north] = view.scale("y").domain();
    const strip = walk.map_strip_px;
    const south = foot + (strip * (east - west)) / view.width();
    const metres = (east - west) / width;
    picture.home = [[west, east], [south - strip * metres, north]];
    view.width(width).height((north - south) / metres + strip);
    return showGround(picture, picture.home);
  }

  async function bring(element) {
    const ident = element.dataset.picture;
    if (live.has(ident) || element.dataset.begun) return;
    element.dataset.begun = "yes";
    const place = document.createElement("div");
    place.className = "live";
    place.setAttribute("aria-hidden", "true");
    element.append(place);
    try {
      await library;
    } catch {
      place.remove();
      return;
    }
    const made = await window.vegaEmbed(place, specification(charts[ident]), {
      mode: "vega", renderer: "svg", ast: true, actions: false, tooltip: false,
      defaultStyle: false, hover: false,
    });
    const kind = element.dataset.kind;
    const picture = {
      view: made.view, element: place, kind, across: kind === "map" ? "x" : "concat_0_x",
      leg: element.dataset.leg === undefined ? null : Number(element.dataset.leg),
    };
    element.classList.add("moving");
    if (kind === "map") {
      picture.whole = made.view.scale("x").domain()[1] - made.view.scale("x").domain()[0];
      await fitMap(picture);
    }
    live.set(ident, picture);
    for (const name of ["pointermove", "click"]) {
      place.addEventListener(name, (event) => {
        if (!(name === "pointermove" && event.buttons)) pointed(picture, event);
      });
    }
    show(picture, momentAt(now));
  }

  // Going by itself ----------------------------------------------------------------

  const WHOLE_WALK_S = 40;
  const runner = document.getElementById("moment-run");
  let running = null;

  function run(at) {
    const last = walk.t[walk.t.length - 1];
    if (running === null) return;
    const step = running.at === null ? 0 : ((at - running.at) / 1000) * (last / WHOLE_WALK_S);
    running.at = at;
    moveTo(now + step);
    if (now >= last) toggle();
    else window.requestAnimationFrame(run);
  }

  function toggle() {
    running = running === null ? { at: null } : null;
    runner.setAttribute("aria-pressed", String(running !== null));
    if (running === null) return;
    if (now >= walk.t[walk.t.length - 1]) now = 0;
    window.requestAnimationFrame(run);
  }

  // Start --------------------------------------------------------------------------

  const map = document.querySelector('[data-kind="map"]');
  slider.max = walk.t[walk.t.length - 1];
  slider.addEventListener("input", () => moveTo(Number(slider.value)));
  runner.addEventListener("click", toggle);
  for (const button of document.querySelectorAll("[data-map-key]")) {
    button.addEventListener("click", () => moves[button.dataset.mapKey]());
  }
  map.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !moves[event.key]) return;
    event.preventDefault();
    moves[event.key]();
  });
  map.tabIndex = 0;
  for (const one of document.querySelectorAll(".controls")) one.hidden = false;

  const watch = new IntersectionObserver((entries) => {
    for (const entry of entries) {
      if (entry.isIntersecting) {
        watch.unobserve(entry.target);
        bring(entry.target);
      }
    }
  }, { rootMargin: "300px" });
  for (const element of document.querySelectorAll("[data-picture]")) watch.observe(element);
  moveTo(0);
})();

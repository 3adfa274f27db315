// The reading page itself: what is set, what is pressed, the clock, and what the screen shows.
(() => {
  const root = document.documentElement;
  const { get, put, say, open } = controls;
  const control = location.hash === "#control";
  let script = drawing.read();

  // --- what is set -------------------------------------------------------------------------------

  const defaults = {
    lens: "above", line: 20, column: 28, size: 100, face: "sans", mirror: false, upside: false,
    movement: "device", lead: 3, pedal: "step", letters: true, times: true, countHolds: false, dropSpare: false,
    ruler: null, distance: 100, trim: 1,
  };
  // The spoken line stands as near to the lens as the text around it allows.
  const lineFor = { above: 20, behind: 45, below: 74, left: 42, right: 42 };
  const kept = drawing.store("reading settings");
  const settings = { ...defaults, ...kept.get() };
  const stillness = matchMedia("(prefers-reduced-motion: reduce)");
  const gliding = () => (settings.movement === "device" ? !stillness.matches : settings.movement === "glide");

  function set(name, value) {
    if (!(name in defaults)) return;
    settings[name] = value;
    if (name === "lens") settings.line = lineFor[value] ?? settings.line;
    if (!control) kept.set(settings);
    if (control) return;
    if (name === "dropSpare") rebuild(script);
    else if (name === "trim") anchor();
    applySettings();
    announce();
  }

  function applySettings() {
    for (const lens of Object.keys(lineFor)) root.classList.toggle(`lens-${lens}`, settings.lens === lens);
    for (const face of ["sans", "serif", "mono"]) root.classList.toggle(`face-${face}`, settings.face === face);
    root.classList.toggle("mirror", settings.mirror);
    root.classList.toggle("upside", settings.upside);
    root.classList.toggle("no-times", !settings.times);
    root.classList.toggle("stepping", !gliding());
    fillForm();
    if (!control) layOut();
  }

  // Type that lets the column fit the screen and leaves some lines below the spoken one.
  function typeSize() {
    const wide = (0.9 * innerWidth) / (settings.column * 0.54);
    return Math.min(Math.max(Math.min(wide, innerHeight / 14), 30), 180) * (settings.size / 100);
  }

  // --- the script and its time -------------------------------------------------------------------

  const stage = get("stage"), layer = get("layer");
  let timeline, text;
  let places; // of the kept place, by title

  // First thought of each section; -1 where a section has none.
  const startOf = (section) => timeline.run.findIndex(({ thought }) => thought.section >= section);

  function rebuild(next) {
    const place = timeline && timeline.run.length ? placeOf(timeline, timeline.at(position())) : null;
    const since = place ? position() - timeline.run[timeline.at(position())].start : 0;
    script = next;
    timeline = makeTimeline(script, settings.dropSpare);
    places = drawing.store(`reading place ${script.title}`);
    if (place) {
      const row = timeline.run[findPlace(timeline, place)];
      const at = row ? Math.min(row.start + since, Math.max(row.end - 0.01, row.start)) : 0;
      state.used = used();
      state.t = at;
      state.from = performance.now();
    }
    text?.clear();
    text = makeText(stage, layer, script, timeline);
    document.title = control ? `Control: ${script.title || "Script"}` : script.title || "Script";
    get("title").textContent = script.title || "Script";
    root.lang = script.language;
    fillPlaces();
  }

  // --- the clock ---------------------------------------------------------------------------------

  // `t` and `used` were true at `from`; while it runs they follow from the time since.
  const state = { t: 0, used: 0, from: 0, trim: 1, running: false, started: false, fresh: true, leadEnds: null, ended: false };
  const since = () => (performance.now() - state.from) / 1000;

  function position() {
    if (!state.running) return state.t;
    return timeline.placeAfter(timeline.taken(state.t, state.trim) + since(), state.trim);
  }
  function used() {
    const counts = state.running || (settings.countHolds && state.started && !state.ended);
    return state.used + (counts ? since() : 0);
  }
  const left = (t) => timeline.taken(timeline.total, state.trim) - timeline.taken(t, state.trim);

  // Makes what is true now the start of what follows.
  function anchor() {
    const t = position(), spent = used();
    Object.assign(state, { t, used: spent, from: performance.now(), trim: settings.trim });
  }

  function verdict(seconds) {
    const target = script.target;
    if (!target) return "";
    if (seconds > target.high + 0.5) return `${drawing.clock(seconds - target.high)} over`;
    if (target.low > 0 && seconds < target.low - 0.5) return `${drawing.clock(target.low - seconds)} under`;
    return "on target";
  }

  // --- what can be done --------------------------------------------------------------------------

  function go() {
    if (state.running || state.leadEnds !== null || !timeline.run.length) return;
    if (state.ended) top();
    say("");
    controls.keepAwake();
    wakeBar();
    if (settings.lead > 0 && state.fresh) state.leadEnds = performance.now() + settings.lead * 1000;
    else start();
    update();
    wake();
  }

  function start() {
    anchor();
    Object.assign(state, { leadEnds: null, running: true, started: true, fresh: false, ended: false });
  }

  function hold() {
    state.leadEnds = null;
    if (state.running) { anchor(); state.running = false; }
    keepPlace();
    update();
  }

  // A jump while it is held starts the clock where a read from the top would be; one while it runs
  // leaves the clock alone.
  function seek(t) {
    const held = !state.running;
    anchor();
    state.t = Math.min(Math.max(t, 0), timeline.total);
    state.ended = false;
    if (held && !(settings.countHolds && state.started)) {
      state.used = timeline.taken(state.t, state.trim);
      state.fresh = true;
    }
    keepPlace();
    update();
  }

  function top() {
    state.running = false;
    Object.assign(state, { leadEnds: null, started: false });
    seek(0);
    state.used = 0;
    update();
  }

  const timed = (index, step) => {
    let other = index + step;
    while (timeline.run[other] && timeline.run[other].thought.seconds === 0) other += step;
    return timeline.run[other];
  };
  function next() {
    seek(timed(timeline.at(position()), 1)?.start ?? timeline.total);
  }
  // Back to the thought's start; from there to the one before it.
  function back() {
    const index = timeline.at(position());
    const start = timeline.run[index]?.start ?? 0;
    seek(position() - start > 1 || index === 0 ? start : timed(index, -1)?.start ?? 0);
  }
  function section(step) {
    const index = timeline.at(position());
    const starts = [...new Set(script.sections.map((_, at) => startOf(at)).filter((at) => at >= 0))];
    const other = step > 0 ? starts.find((at) => at > index) : starts.filter((at) => at < index).pop();
    if (other !== undefined) seek(timeline.run[other].start);
  }
  const trimBy = (step) => set("trim", Math.min(Math.max(Math.round((settings.trim + step) * 20) / 20, 0.5), 2));

  const acts = {
    toggle: () => (state.running || state.leadEnds !== null ? hold() : go()),
    hold, go, next, back, top,
    end: () => seek(timeline.run[timeline.run.length - 1]?.start ?? 0),
    "next-section": () => section(1),
    "section-before": () => section(-1),
    faster: () => trimBy(0.05), slower: () => trimBy(-0.05), "own-pace": () => set("trim", 1),
    larger: () => set("size", Math.min(settings.size + 5, 200)), smaller: () => set("size", Math.max(settings.size - 5, 50)),
    mirror: () => set("mirror", !settings.mirror), upside: () => set("upside", !settings.upside),
    place: (index) => { const row = timeline.run[index]; if (row) seek(row.start); },
    set: ([name, value]) => set(name, value),
    full: () => toggleFull(),
  };

  // Here or, from the second window, there.
  function act(name, value) {
    if (control) { link.send({ kind: "act", name, value }); return; }
    acts[name]?.(value);
    announce();
  }

  // --- what the screen shows ---------------------------------------------------------------------

  let frame = 0, shown = -1, lastTimes = 0;

  function wake() { if (!frame) frame = requestAnimationFrame(onFrame); }

  function tick() {
    if (state.leadEnds !== null && performance.now() >= state.leadEnds) start();
    update();
  }

  function onFrame() {
    frame = 0;
    tick();
    if (state.running || state.leadEnds !== null) frame = requestAnimationFrame(onFrame);
  }

  function update() {
    if (control || !timeline.run.length) return;
    const t = position();
    if (state.running && t >= timeline.total - 1e-6) finish();
    const index = text.show(t, gliding());
    drain(index, t);
    const count = state.leadEnds === null ? 0 : Math.ceil((state.leadEnds - performance.now()) / 1000);
    get("lead").hidden = count <= 0;
    if (count > 0) put("lead", String(count));
    get("end").hidden = !state.ended;
    root.classList.toggle("running", state.running || state.leadEnds !== null);
    put("go", state.running || state.leadEnds !== null ? "Hold" : "Go");
    if (index !== shown) { shown = index; keepPlace(); announce(); }
    if (Math.abs(performance.now() - lastTimes) > 200 || !state.running) { lastTimes = performance.now(); showTimes(summary()); announce(); }
  }

  function finish() {
    anchor();
    state.running = false;
    state.ended = true;
    const target = verdict(state.used);
    put("end", `End. ${drawing.clock(state.used)}${target ? `, ${target}` : ""}`);
  }

  // How much of a pause is left, under its shape.
  let drained = null;
  function drain(index, t) {
    const bar = get("drain");
    const held = state.running && gliding() ? text.heldShape(index, t) : null;
    bar.hidden = !held;
    if (!held) { drained = null; return; }
    if (drained?.element !== held.element) {
      const shape = held.element.getBoundingClientRect(), frame = stage.getBoundingClientRect();
      // The stage may be mirrored: its own pixels are counted from the side it is turned to.
      const x = settings.mirror ? frame.right - shape.right : shape.left - frame.left;
      const y = settings.upside ? frame.bottom - shape.top : shape.bottom - frame.top;
      drained = { element: held.element, x, y, width: shape.width };
      bar.style.width = `${shape.width}px`;
    }
    const share = 1 - (t - timeline.run[index].start - held.part.at) / held.part.seconds;
    bar.style.transform = `translate3d(${drained.x}px, ${drained.y + 6}px, 0) scaleX(${share.toFixed(4)})`;
  }

  function summary() {
    const t = position();
    const index = timeline.at(t);
    return {
      id: timeline.run[index]?.thought.id, index, running: state.running || state.leadEnds !== null, used: used(), left: left(t),
      verdict: verdict(used() + left(t)), trim: state.trim, settings,
    };
  }

  function showTimes(told) {
    put("used", drawing.clock(told.used));
    put("left", drawing.clock(Math.ceil(told.left - 0.05)));
    put("verdict", told.verdict);
    get("verdict-row").hidden = !told.verdict;
    put("pace", `${told.trim.toFixed(2)}x`);
    if (control) put("go", told.running ? "Hold" : "Go");
  }

  function layOut() {
    root.style.setProperty("--type", `${typeSize().toFixed(1)}px`);
    root.style.setProperty("--column", settings.column);
    text.layOut(settings.line / 100);
    drained = null;
    const lead = get("lead"), end = get("end");
    lead.style.top = end.style.top = `${settings.line}%`;
    lead.style.translate = "0 calc(-100% - .5em)"; // above the first words, which are read meanwhile
    end.style.translate = "0 40%";
    update();
    showEyes();
  }

  // --- the place ---------------------------------------------------------------------------------

  function keepPlace() {
    if (control || !timeline.run.length) return;
    places.set(placeOf(timeline, timeline.at(position())));
  }

  function returnTo(place) {
    const index = findPlace(timeline, place);
    if (!place || index === 0) return;
    seek(timeline.run[index].start);
    const fromTop = drawing.make("button", {}, "From the top");
    fromTop.addEventListener("click", () => { act("top"); say(""); stage.focus(); });
    say("The place where you left is kept.", false, fromTop);
  }

  // --- dialogs -----------------------------------------------------------------------------------

  function fillPlaces() {
    const list = get("places-list");
    list.replaceChildren(...script.sections.map((each, at) => {
      const start = startOf(at);
      const button = drawing.make("button", { disabled: start < 0 },
        each.name || "Without a name", drawing.make("span", "small", `${drawing.clock(each.at)}, ${drawing.clock(each.seconds)} long`));
      button.addEventListener("click", () => { act("place", start); get("places").close(); });
      return drawing.make("li", {}, button);
    }));
    if (!script.sections.length) list.append(drawing.make("li", {}, "This script has no sections."));
  }

  const form = get("setup").querySelector("form");
  const fillFields = controls.bind(form, settings, defaults, (name, value) => act("set", [name, value]));
  function fillForm() { fillFields(); showEyes(); }

  // Angles as one reads them aloud: a tenth of a degree is finer than any ruler.
  function showEyes() {
    const guess = (layer.clientWidth / 96) * 2.54; // a CSS inch: right on few screens, hence the ruler
    const width = settings.ruler ?? guess, distance = settings.distance;
    if (!(width > 0) || !(distance > 0)) return;
    const angle = (w, d) => visualAngle(w, d).toFixed(1);
    const ruler = form.elements.ruler;
    ruler.placeholder = guess.toFixed(1);
    put("eyes", `From one end of a line to the other the eyes travel ${angle(width, distance)} degrees. `
      + `A third narrower: ${angle((width * 2) / 3, distance)}. Half as far again from the lens: ${angle(width, distance * 1.5)}. `
      + `The less they travel, the less the lens sees of it. `
      + `At this distance a small letter reads easily from ${(letterHeight(22, distance) * 10).toFixed(0)} mm of height on.`);
  }

  controls.keyTable([
    ["Space, Enter", "go or hold"], ["Right, Page Down", "next thought"], ["Left, Page Up", "thought's start, thought before"],
    ["Up, Down", "faster, slower"], ["Shift with Page Down or Up", "section after, section before"], ["Home, End", "top, last thought"],
    ["+ -", "larger, smaller"], ["0", "own pace"], ["] [", "section after, section before"], [". b", "go or hold (a remote's key for a dark screen)"],
    ["m u", "mirrored, turned"], ["f", "full screen"], ["s k", "set up, this list"],
  ]);

  controls.listen({ act, opens: fillForm, home: () => (control ? null : stage) });

  // --- keys, touch, remote, pedal ----------------------------------------------------------------

  const named = {
    " ": "toggle", Enter: "toggle", ArrowRight: "next", ArrowLeft: "back", ArrowUp: "faster", ArrowDown: "slower",
    Home: "top", End: "end",
  };
  const letters = {
    "+": "larger", "=": "larger", "-": "smaller", 0: "own-pace", "]": "next-section", "[": "section-before",
    ".": "toggle", b: "toggle", m: "mirror", u: "upside", f: "full",
  };
  const opening = { s: "setup", k: "help" };

  function actOfKey(event) {
    if (event.key === "PageDown" && event.shiftKey) return "next-section";
    if (event.key === "PageUp" && event.shiftKey) return "section-before";
    if (event.key === "PageDown") return settings.pedal === "hold" ? "toggle" : "next";
    if (event.key === "PageUp") return "back";
    return named[event.key] ?? (settings.letters ? letters[event.key.toLowerCase()] : undefined);
  }

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || controls.isOpen()) return;
    wakeBar();
    const pressing = event.key === " " || event.key === "Enter";
    if (pressing && event.target.closest?.("button")) return;
    const name = actOfKey(event);
    if (name && (!event.repeat || name !== "toggle")) act(name);
    if (name) event.preventDefault();
    else if (settings.letters && opening[event.key]) { event.preventDefault(); open(opening[event.key]); }
  });

  let touch = null; // a finger on the text: where it came down and where it was last
  stage.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    touch = { x: event.clientX, y: event.clientY, last: event.clientY, drawn: false };
    stage.setPointerCapture(event.pointerId);
  });
  stage.addEventListener("pointermove", (event) => {
    wakeBar();
    if (!touch) return;
    const up = Math.abs(event.clientY - touch.y), aside = Math.abs(event.clientX - touch.x);
    if (!touch.drawn && (up < 10 || up < aside)) return;
    touch.drawn = true;
    moveText(touch.last - event.clientY);
    touch.last = event.clientY;
  });
  stage.addEventListener("pointerup", (event) => {
    if (!touch) return;
    const aside = event.clientX - touch.x;
    if (!touch.drawn) act(Math.abs(aside) < 50 ? "toggle" : aside < 0 ? "next" : "back");
    touch = null;
  });
  stage.addEventListener("pointercancel", () => { touch = null; });
  stage.addEventListener("wheel", (event) => {
    event.preventDefault();
    moveText(event.deltaMode === 1 ? event.deltaY * 30 : event.deltaY);
  }, { passive: false });

  function moveText(pixels) {
    if (timeline.run.length) seek(text.timeBelow(position(), settings.upside ? -pixels : pixels));
  }

  let idle = 0;
  function wakeBar() {
    root.classList.remove("idle");
    clearTimeout(idle);
    idle = setTimeout(() => { if (state.running || state.leadEnds !== null) root.classList.add("idle"); }, 3000);
  }

  // --- screen, sleep, second window --------------------------------------------------------------

  function toggleFull() {
    const done = document.fullscreenElement ? document.exitFullscreen?.() : root.requestFullscreen?.();
    if (!done) say("This browser has no full screen; hide its bars by hand.", true);
    else done.catch(() => say("The browser refused full screen; press its own key for it.", true));
  }
  get("full").addEventListener("click", toggleFull);

  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") keepPlace(); });
  addEventListener("pagehide", keepPlace);

  function announce() {
    if (!control) link.send({ kind: "state", ...summary() });
  }

  let heard = false;
  const link = makeLink(script.title, (message) => {
    if (!control && message.kind === "act") { acts[message.name]?.(message.value); announce(); }
    if (!control && message.kind === "hello") announce();
    if (control && message.kind === "state") followReading(message);
  });

  function followReading(told) {
    if (!heard) say("");
    heard = true;
    Object.assign(settings, told.settings);
    const changed = timeline.dropSpare !== settings.dropSpare;
    if (changed) { timeline = Object.assign(makeTimeline(script, settings.dropSpare), { dropSpare: settings.dropSpare }); }
    fillForm();
    showTimes(told);
    if (told.id === shown) return;
    shown = told.id;
    const index = timeline.indexOf(told.id);
    for (const [id, row] of [["surface-now", timeline.run[index]], ["surface-next", timed(index, 1)]]) {
      get(id).replaceChildren(...(row && index >= 0 ? [drawing.thought(script, row.thought)] : ["The end."]));
    }
  }

  get("window").addEventListener("click", () => {
    const opened = window.open(`${location.href.split("#")[0]}#control`, "sayline-control", "width=900,height=760");
    if (opened) link.add(opened);
    else say("The browser held the second window back: allow it to open windows, or open this page again with #control at the end of its address.", true);
  });

  // --- the beginning -----------------------------------------------------------------------------

  state.trim = settings.trim;
  rebuild(script);
  if (control) {
    root.classList.add("control");
    stage.hidden = true;
    get("surface").hidden = false;
    applySettings();
    link.send({ kind: "hello" });
    setTimeout(() => { if (!heard) say("No reading window answers: open the second window from there.", true); }, 2000);
  } else {
    const place = places.get(); // before anything is shown, which is a place too
    applySettings();
    returnTo(place);
    let width = 0, height = 0;
    new ResizeObserver(() => {
      if (innerWidth === width && innerHeight === height) return;
      width = innerWidth; height = innerHeight;
      layOut();
    }).observe(stage);
    document.fonts?.ready.then(layOut);
    // A window that lies behind another draws no frames; the second window must still hear the times.
    setInterval(() => { if (document.hidden && frame) tick(); }, 500);
    stillness.addEventListener("change", applySettings);
    if (!controls.cautionFirst()) stage.focus({ preventScroll: true });
    if (!timeline.run.length) say("There is nothing to say in this script yet.", true);
  }

  let latest = get("script").textContent;
  listenForSaves((json) => {
    if (json === latest) { say(""); return; }
    latest = json;
    rebuild(drawing.read(json));
    shown = -1;
    if (!control) layOut();
    say("The script was saved; this is its new text.");
  }, (message) => say(message, true));
})();

// The practice page itself: what is chosen, the two exercises, what was recorded.
(() => {
  const root = document.documentElement;
  const { get, put, say, open } = controls;
  const { make, clock } = drawing;
  const script = drawing.read();
  const title = script.title || "Script";

  // --- what is set -------------------------------------------------------------------------------

  const defaults = { size: 100, lead: 3, speed: 1, ahead: false };
  const kept = drawing.store("practice settings");
  const settings = { ...defaults, ...kept.get() };

  function set(name, value) {
    settings[name] = value;
    anchor(); // a new speed counts from where one is
    kept.set(settings);
    fillForm();
    layOut();
  }
  const fillForm = controls.bind(get("setup").querySelector("form"), settings, defaults, set);

  // --- where one is ------------------------------------------------------------------------------

  let mode = "start"; // captions, cold, result
  const exercising = () => mode === "captions" || mode === "cold";

  function show(next) {
    mode = next;
    for (const sheet of ["start", "result"]) get(sheet).hidden = mode !== sheet;
    get("exercise").hidden = !exercising();
    for (const name of ["captions", "cold"]) root.classList.toggle(name, mode === name);
    if (exercising()) {
      get("stage").setAttribute("aria-label", mode === "captions" ? "Captions; a tap or the space bar goes and holds" : "One thought; a tap or the space bar when you have said it");
      put("leave", mode === "cold" ? "Stop here" : "Leave");
      layOut();
    }
    home().focus({ preventScroll: true });
    scrollTo(0, 0);
  }
  const home = () => get(exercising() ? "stage" : mode);

  // Lines as long as those of the captions, a reader's own column for thoughts.
  function layOut() {
    const column = mode === "captions" ? Math.min(Math.max(list.longest, 20), 46) : 28;
    const wide = (0.9 * innerWidth) / (column * 0.54);
    const type = Math.min(Math.max(Math.min(wide, innerHeight / 13), 22), 120) * (settings.size / 100);
    root.style.setProperty("--type", `${type.toFixed(1)}px`);
    root.style.setProperty("--column", column);
    drawn = "";
    update();
  }

  // --- which captions ----------------------------------------------------------------------------

  const own = JSON.parse(get("captions").textContent)
    .map(({ begin, end, lines, speaker }) => ({ begin, end, turns: [{ speaker, lines }] }));
  let list = makeCueList(own);

  const counted = (count, one) => `${count} ${one}${count === 1 ? "" : "s"}`;

  function take(cues, name) {
    list = makeCueList(cues);
    top();
    const who = list.speakers.length > 1 ? `, ${list.speakers.length} speakers` : "";
    put("source", cues.length ? `${name}: ${counted(cues.length, "caption")}, ${clock(list.total)}${who}` : "There is nothing to say in this script yet; choose a file of captions.");
    get("own").hidden = cues === own;
  }

  async function openFile(file) {
    let read;
    try {
      // What is far too large for captions is not even loaded.
      read = readCaptions(file.size > mostCaptionBytes ? { byteLength: file.size } : await file.arrayBuffer());
    } catch {
      say(`${file.name} cannot be opened. See that it is still there, then choose it again.`, true);
      return;
    }
    const [first] = read.faults;
    const others = read.faults.length > 1 ? ` ${counted(read.faults.length - 1, "other place")} cannot be read either.` : "";
    if (!read.cues.length) {
      const { line, what } = first ?? { line: 1, what: `there are no captions in it; choose a .vtt or .srt file, with times such as ${timesAsWritten}` };
      say(`${file.name}, line ${line}: ${what}. What was here before stays.`, true);
      return;
    }
    if (exercising()) acts.leave();
    take(read.cues, file.name);
    if (first) say(`${file.name}, line ${first.line}: ${first.what}.${others} ${counted(read.cues.length, "caption")} can be read.`, true);
    else say(`${file.name} is ready.`);
  }

  get("file").addEventListener("change", (event) => {
    const [file] = event.target.files;
    if (file) openFile(file);
    event.target.value = ""; // the same file again, once it is mended
  });
  addEventListener("dragover", (event) => { event.preventDefault(); root.classList.add("dropping"); });
  addEventListener("dragleave", (event) => { if (!event.relatedTarget) root.classList.remove("dropping"); });
  addEventListener("drop", (event) => {
    event.preventDefault();
    root.classList.remove("dropping");
    const [file] = event.dataTransfer.files;
    if (file) openFile(file);
  });

  // --- the count before it starts ----------------------------------------------------------------

  let leadEnds = null;
  function countIn(start) {
    say("");
    controls.keepAwake();
    leadEnds = { at: performance.now() + settings.lead * 1000, start };
    wake();
  }

  function tick() {
    if (leadEnds && performance.now() >= leadEnds.at) {
      const { start } = leadEnds;
      leadEnds = null;
      start();
    }
    update();
  }

  let frame = 0;
  function wake() { tick(); if (!frame && (leadEnds || play.running)) frame = requestAnimationFrame(onFrame); }
  function onFrame() {
    frame = 0;
    tick();
    if (leadEnds || play.running) frame = requestAnimationFrame(onFrame);
  }

  // --- captions: the clock -----------------------------------------------------------------------

  // `t` was true at `from`; while it runs it follows from the time since.
  const play = { t: 0, from: 0, speed: settings.speed, running: false, ended: false };
  const position = () => Math.min(play.running ? play.t + ((performance.now() - play.from) / 1000) * play.speed : play.t, list.total);

  function anchor() { Object.assign(play, { t: position(), from: performance.now(), speed: settings.speed }); }
  function go() {
    if (play.running || leadEnds || !list.cues.length) return;
    if (play.ended) top();
    const fresh = play.t === 0;
    const start = () => { anchor(); Object.assign(play, { running: true, ended: false }); };
    if (settings.lead > 0 && fresh) countIn(start);
    else { say(""); controls.keepAwake(); start(); wake(); }
  }
  function hold() {
    leadEnds = null;
    anchor();
    play.running = false;
    update();
  }
  function seek(t) {
    anchor();
    Object.assign(play, { t, ended: false });
    update();
  }
  function top() {
    leadEnds = null;
    Object.assign(play, { running: false, ended: false, t: 0 });
    update();
  }
  function cueAfter() {
    const next = list.cues[list.begun(position()) + 1];
    if (next) seek(next.begin);
  }
  // Back to where the cue begins; from there to the one before it.
  function cueBefore() {
    const at = list.begun(position());
    const begin = list.cues[at]?.begin ?? 0;
    seek(position() - begin > 1 ? begin : list.cues[at - 1]?.begin ?? 0);
  }
  const speedBy = (step) => set("speed", Math.min(Math.max(Math.round((settings.speed + step) * 20) / 20, 0.5), 1.5));

  // --- captions: what is seen --------------------------------------------------------------------

  let drawn = ""; // what stands on the stage, so that it is drawn once

  function drawCue(cue, name) {
    return make("div", `cue-words ${name}`, ...cue.turns.map(({ speaker, lines }) => {
      const turn = make("div", { class: "thought", dir: "auto" });
      if (speaker) {
        turn.dataset.voice = list.speakers.indexOf(speaker) % 4;
        turn.append(make("p", "speaker", speaker));
      }
      turn.append(make("p", "words", ...lines.flatMap((line, index) => [index ? "\n" : null, make("span", "line", line)])));
      return turn;
    }));
  }

  function drawCaptions(t) {
    const standing = leadEnds || play.ended ? [] : list.standing(t);
    const begun = list.begun(t);
    const next = list.cues[leadEnds ? 0 : begun + 1];
    const ahead = settings.ahead && next && !play.ended ? next : null;
    // A silence is counted down, so that nobody wonders whether it goes on.
    const silent = !leadEnds && !standing.length && next && next.begin - Math.max(list.cues[begun]?.end ?? 0, 0) > 1.5;
    const wait = silent ? Math.ceil((next.begin - t) / settings.speed) : 0;
    const now = [standing, ahead && begun, wait, play.ended, Boolean(leadEnds)].join(" ");
    if (now === drawn) return;
    drawn = now;
    const words = standing.map((index) => drawCue(list.cues[index], ""));
    if (play.ended) words.push(make("p", "end", `End. ${clock(list.total / settings.speed)} at this speed.`));
    if (wait) words.push(make("p", "wait", `silence, ${wait}`));
    if (ahead) words.push(drawCue(ahead, "ahead"));
    get("layer").replaceChildren(...words);
  }

  // --- cold read ---------------------------------------------------------------------------------

  let thoughts = [], at = 0, shownAt = 0, seconds = [], round = null;

  function fillParts() {
    const part = get("part");
    part.replaceChildren(make("option", { value: -1 }, "all of it"));
    script.sections.forEach((section, index) => {
      if (thoughtsToRead(script, index).length) part.append(make("option", { value: index }, section.name || "without a name"));
    });
    get("part-row").hidden = part.length < 3;
    part.addEventListener("change", showAmount);
    showAmount();
  }
  const wanted = () => thoughtsToRead(script, Number(get("part").value));
  function showAmount() {
    const expected = wanted().reduce((sum, thought) => sum + thought.seconds, 0);
    put("amount", wanted().length ? `This script: ${counted(wanted().length, "thought")}, about ${clock(expected)}` : "There is nothing to say in this script yet.");
  }

  function coldRead() {
    thoughts = wanted();
    if (!thoughts.length) return;
    Object.assign(play, { running: false });
    at = -1;
    seconds = [];
    show("cold");
    countIn(() => appear(0));
  }

  function appear(index) {
    at = index;
    shownAt = performance.now();
    update();
  }
  // What came between the words and the reader does not count: this thought's time begins anew.
  function timeAnew() { if (mode === "cold") shownAt = performance.now(); }

  function said() {
    if (at < 0) return;
    const took = (performance.now() - shownAt) / 1000;
    if (took < bounce) return;
    seconds[at] = took;
    if (at + 1 < thoughts.length) appear(at + 1);
    else finish();
  }
  // This thought anew; right after it came up, the one before.
  function onceMore() {
    if (at < 0) return;
    appear(performance.now() - shownAt < 1000 ? Math.max(at - 1, 0) : at);
  }

  function drawThought() {
    const now = `${at} ${thoughts.length}`;
    if (now === drawn) return;
    drawn = now;
    const thought = thoughts[at];
    const above = thought ? drawing.sectionsBefore(script, thought, script.thoughts[thought.index - 1]).map(drawing.heading) : [];
    get("layer").replaceChildren(...(thought ? [...above, drawing.thought(script, thought)] : []));
    get("stage").scrollTop = 0;
  }

  // --- what both show ----------------------------------------------------------------------------

  function showTimes(rows) {
    const now = rows.flat().join(" ");
    const times = get("times");
    if (times.dataset.now === now) return;
    times.dataset.now = now;
    times.replaceChildren(...rows.map(([name, value]) => make("p", {}, make("span", "small", name), " ", make("b", {}, value))));
  }

  function update() {
    if (!exercising()) return;
    const count = leadEnds ? Math.ceil((leadEnds.at - performance.now()) / 1000) : 0;
    get("count").hidden = count <= 0;
    if (count > 0) put("count", String(count));
    if (mode === "cold") {
      drawThought();
      showTimes([["thought", `${Math.max(at, 0) + 1} of ${thoughts.length}`]]);
      return;
    }
    const t = position();
    if (play.running && t >= list.total - 1e-6) { anchor(); Object.assign(play, { running: false, ended: true }); }
    drawCaptions(t);
    put("go", play.running || leadEnds ? "Hold" : "Go");
    showTimes([["caption", `${Math.max(list.begun(t) + 1, 0)} of ${list.cues.length}`], ["at", `${clock(t)} of ${clock(list.total)}`], ["speed", `${settings.speed.toFixed(2)}x`]]);
  }

  // --- what it took ------------------------------------------------------------------------------

  function finish() {
    leadEnds = null;
    const rows = seconds.map((each, index) => ({ thought: thoughts[index], seconds: each }));
    if (!rows.length) { show("start"); return; }
    const before = round;
    round = { ...roundOf(rows), of: thoughts };
    drawResult();
    const whole = (each) => each && each.thoughts.length === each.of.length;
    const again = whole(before) && whole(round) && before.of[0] === round.of[0] && before.of.length === round.of.length;
    if (again) get("sum").append(` The read before it took ${length(before.taken)}.`);
    get("last").hidden = false;
    show("result");
  }

  const tenths = (value) => value.toFixed(1);
  const paceOf = (value) => `${value.toFixed(2)}x`;
  const length = (seconds) => (seconds < 60 ? `${tenths(seconds)} s` : clock(seconds));
  const short = (text) => (text.length > 48 ? `${text.slice(0, 48).replace(/\s\S*$/, "")} \u2026` : text);

  function drawResult() {
    const { taken, expected, pace, slowest, fastest } = round;
    const all = round.of.length;
    const part = round.thoughts.length < all ? ` of ${all}` : "";
    put("sum", `${round.thoughts.length}${part} ${all === 1 ? "thought" : "thoughts"} in ${length(taken)} where ${length(expected)} was expected: a pace of ${paceOf(pace)}, ${paceInWords(pace)}.`);
    const tell = (name, each) => `${name} for its words: \u201c${short(saidLine(each.thought))}\u201d, ${tenths(each.taken)} s where ${tenths(each.expected)} s was expected.`;
    get("odd").replaceChildren(...(slowest ? [tell("Slowest", slowest), make("br"), tell("Fastest", fastest)] : []));
    const widest = Math.max(...round.thoughts.map((each) => Math.max(each.taken, each.expected)));
    const bar = (name, value) => { const element = make("i", name); element.style.width = `${((100 * value) / widest).toFixed(2)}%`; return element; };
    const cells = (each) => [make("td", {}, tenths(each.expected)), make("td", {}, tenths(each.taken)), make("td", {}, paceOf(each.pace))];
    get("rows").replaceChildren(...round.thoughts.map((each) => make("tr", each === slowest || each === fastest ? "extreme" : {},
      make("th", { scope: "row", dir: "auto" }, each.thought.text, make("div", { class: "bars", "aria-hidden": "true" }, bar("expected", each.expected), bar("taken", each.taken))),
      ...cells(each))));
    get("all").replaceChildren(make("tr", {}, make("th", { scope: "row" }, "Together"), ...cells(round)));
  }

  function saveFile(name, content) {
    const address = URL.createObjectURL(content);
    make("a", { href: address, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
  }

  function saveTimes() {
    const day = new Date();
    const two = (number) => String(number).padStart(2, "0");
    const date = `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
    saveFile(fileName(title, "cold read.tsv"), new Blob([timedLines(script.title, date, round)], { type: "text/tab-separated-values" }));
  }

  // --- takes -------------------------------------------------------------------------------------

  const takes = []; // { name, sound, saved }
  const takeNumber = drawing.store(`practice takes ${script.title}`);
  let agreed = false;

  const recorder = makeRecorder({
    changed() {
      const state = recorder.state();
      root.classList.toggle("recording", state === "recording");
      put("record", state === "recording" || state === "ending" ? "Stop" : "Record");
      put("recording", state === "recording" ? "Recording" : state === "asking" ? "Asking for the microphone" : "");
      showElapsed();
      timeAnew();
    },
    kept({ sound, ending, seconds: took }) {
      const number = (takeNumber.get() ?? 0) + 1;
      takeNumber.set(number);
      const name = fileName(title, `take ${number}.${ending}`);
      addTake({ name, sound, saved: false }, `Take ${number}, ${clock(took)}`);
    },
    refused: (message) => say(message, true),
  });

  function addTake(kept, label) {
    takes.push(kept);
    const told = make("span", "name", label);
    const save = () => {
      saveFile(kept.name, kept.sound);
      kept.saved = true;
      told.textContent = `${label}, saved`;
      say("");
    };
    const button = (text) => {
      const element = make("button", { "aria-label": `${text}: ${label}` }, text);
      element.addEventListener("click", save);
      return element;
    };
    get("no-takes").hidden = true;
    get("takes").append(make("li", {}, told,
      make("audio", { controls: true, preload: "metadata", "aria-label": label, src: URL.createObjectURL(kept.sound) }), button("Save as a file")));
    say(`${label}: it is kept only as long as this page is open.`, true, button("Save as a file"));
  }

  function record() {
    if (recorder.state() === "recording") recorder.stop();
    else if (agreed) recorder.start();
    else { if (mode === "captions") hold(); open("ask"); }
  }
  get("agree").addEventListener("click", () => { agreed = true; recorder.start(); });

  function showElapsed() { put("recorded", recorder.state() === "recording" ? clock(recorder.elapsed()) : ""); }
  setInterval(showElapsed, 500);

  addEventListener("beforeunload", (event) => {
    if (recorder.state() === "recording" || takes.some((each) => !each.saved)) event.preventDefault();
  });

  // --- what is pressed ---------------------------------------------------------------------------

  const acts = {
    record,
    captions: () => { if (list.cues.length) { show("captions"); top(); go(); } },
    cold: coldRead,
    last: () => show("result"),
    choose: () => get("file").click(),
    own: () => { take(own, "This script"); say(""); },
    leave: () => { if (mode === "cold") finish(); else { if (mode === "captions") hold(); show("start"); } },
    "save-times": saveTimes,
    toggle: () => (mode === "cold" ? said() : play.running || leadEnds ? hold() : go()),
    next: () => (mode === "cold" ? said() : cueAfter()),
    back: () => (mode === "cold" ? onceMore() : cueBefore()),
    slower: () => speedBy(-0.05), faster: () => speedBy(0.05),
    top: () => { if (mode === "captions") top(); },
    end: () => { if (mode === "captions" && list.cues.length) seek(list.cues[list.cues.length - 1].begin); },
    larger: () => set("size", Math.min(settings.size + 5, 200)), smaller: () => set("size", Math.max(settings.size - 5, 50)),
  };

  controls.listen({ act: (name) => acts[name]?.(), opens: () => { fillForm(); if (mode === "captions" && (play.running || leadEnds)) hold(); }, home });
  for (const dialog of document.querySelectorAll("dialog")) dialog.addEventListener("close", timeAnew);
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") timeAnew(); });

  controls.keyTable([
    ["Space, Enter", "captions: go or hold; cold read: said it"], ["Right, Page Down", "next caption; said it"],
    ["Left, Page Up", "the caption's start, the one before; this thought anew, the one before"],
    ["Up, Down", "captions: faster, slower"], ["Home, End", "captions: top, last caption"], ["Escape", "leave; in a cold read, stop here and see the times"],
  ]);
  const keys = {
    " ": "toggle", Enter: "toggle", ArrowRight: "next", PageDown: "next", ArrowLeft: "back", PageUp: "back",
    ArrowUp: "faster", ArrowDown: "slower", Home: "top", End: "end", Escape: "leave",
  };
  // A long thought is scrolled by the arrows, as any text is.
  const ofCaptions = new Set(["ArrowUp", "ArrowDown", "Home", "End"]);

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || controls.isOpen() || !exercising()) return;
    const name = keys[event.key];
    if (!name || (mode === "cold" && ofCaptions.has(event.key))) return;
    if ((event.key === " " || event.key === "Enter") && event.target.closest?.("button")) return;
    event.preventDefault();
    if (!event.repeat || ofCaptions.has(event.key)) acts[name]();
  });
  get("stage").addEventListener("click", () => { acts.toggle(); home().focus({ preventScroll: true }); });

  // --- the beginning -----------------------------------------------------------------------------

  put("title", title);
  take(own, "This script");
  fillParts();
  fillForm();
  addEventListener("resize", () => { if (exercising()) layOut(); });
  controls.cautionFirst();
})();

// What the pages of a script share: reading it, drawing a thought with its marks, clocks, and what
// is kept from one visit to the next. A page is one file without a build step, so this is a plain
// script, and `drawing` is the only name it adds. Text of the script becomes text of the page and
// nothing else: no string of it is ever read as HTML.
"use strict";

const drawing = (() => {
  // --- reading ---------------------------------------------------------------------------------

  // The script as the `json` export writes it; times in seconds.
  function read(text = document.getElementById("script").textContent) {
    const script = JSON.parse(text);
    script.thoughts.forEach((thought, index) => { thought.index = index; });
    return script;
  }

  // --- elements --------------------------------------------------------------------------------

  // make("p", "words", "text", child...): attributes in an object as the second argument.
  function make(name, attributes, ...children) {
    const element = document.createElement(name);
    const named = typeof attributes === "string" ? { class: attributes } : attributes ?? {};
    for (const [key, value] of Object.entries(named)) {
      if (value !== undefined && value !== null && value !== false) element.setAttribute(key, value === true ? "" : value);
    }
    element.append(...children.filter((child) => child !== null && child !== undefined));
    return element;
  }

  // --- marks -----------------------------------------------------------------------------------

  const kebab = (name) => name.replaceAll(" ", "-").replaceAll("_", "-");
  // Marks that run over several words and the blanks between them.
  const running = new Set(["stress", "heavy-stress", "soft", "aside", "quoted", "quick", "slow"]);
  // Marks that are drawn behind their word, in this order.
  const trailing = ["stretch", "end-up", "end-down", "tie"];
  // What a listener to the page hears of a shape.
  const spoken = {
    pause: "pause", beat: "beat", breath: "breath", reset: "full stop, start anew", micropause: "barely a stop",
    "timed-pause": "pause", stretch: "draw the sound out", "end-up": "tune rises", "end-down": "tune falls",
    tie: "run together", "step-up": "step up", "step-down": "step down",
  };

  // Signs where the words of a mark begin and end.
  const edges = { quoted: ["\u201c", "\u201d"], aside: ["(", ")"] };

  const marksOf = (part) => (part?.marks ?? []).map(kebab);

  // A drawn shape with a name for those who do not see it.
  function shape(name, label, ...children) {
    return make("span", { class: name, role: "img", "aria-label": label }, ...children);
  }

  const shortSeconds = (seconds) => String(Math.round(seconds * 10) / 10);

  // A pause: its shape tells the kind, its width the seconds.
  function drawPause(part) {
    const kind = kebab(part.pause);
    const element = shape(`held ${kind}`, `${spoken[kind] ?? kind}, ${shortSeconds(part.seconds)} seconds`);
    element.style.setProperty("--seconds", Math.min(part.seconds, 8));
    if (kind === "beat") {
      const beats = Math.min(Math.max(Math.round(part.seconds), 1), 8);
      for (let beat = 0; beat < beats; beat++) element.append(make("i"));
    }
    if (kind === "timed-pause") element.append(shortSeconds(part.seconds));
    return element;
  }

  function drawDirection(part) {
    return make("span", { class: "cue", role: "note", "aria-label": `direction: ${part.direction}` }, part.direction);
  }

  function drawWord(part) {
    const marks = marksOf(part);
    const name = marks.includes("heavy-stress") || marks.includes("punch") ? "strong" : marks.includes("stress") ? "em" : "span";
    const word = make(name, ["word", ...marks].join(" "));
    for (const step of ["step-up", "step-down"]) if (marks.includes(step)) word.append(shape(`${step} wedge`, spoken[step]));
    const said = part.sound ?? part.instead;
    if (said) {
      word.append(make("ruby", part.sound ? "sound" : "instead", part.word, make("rt", {}, said)));
    } else {
      word.append(part.word);
    }
    for (const mark of trailing) if (marks.includes(mark)) word.append(shape(`${mark} tail`, spoken[mark]));
    return word;
  }

  // Signs and blanks between two words carry the marks that run over both.
  function drawBetween(text, before, after) {
    const shared = marksOf(before).filter((mark) => running.has(mark) && marksOf(after).includes(mark));
    return shared.length ? make("span", `between ${shared.join(" ")}`, text) : document.createTextNode(text);
  }

  const nearest = (parts, index, step) => {
    for (let at = index + step; at >= 0 && at < parts.length; at += step) if (parts[at].word !== undefined) return parts[at];
    return undefined;
  };

  // A longer word, a web address say, must be able to break whatever stands behind it.
  const longestKept = 18;

  // The parts of a thought in the order they are met. A pause stays on the line of the word before
  // it: the blank that stands between them is drawn behind it.
  function drawParts(parts) {
    const line = make("p", "words");
    let group = line; // where the next sign or shape goes: a stretch that is not broken, or the line
    let blank = ""; // owed before what comes next
    let opening = ""; // a bracket or quotation mark, owed to the next word
    const settle = (index) => {
      if (blank) line.append(drawBetween(blank, nearest(parts, index, -1), nearest(parts, index - 1, 1)));
      blank = "";
      group = line;
    };
    parts.forEach((part, index) => {
      let element;
      if (part.word !== undefined) {
        settle(index);
        element = drawWord(part);
        group = make("span", {}, opening || null, element);
        opening = "";
        line.append(group);
      } else if (part.pause !== undefined) {
        element = drawPause(part);
        if (group !== line && group.textContent.length < longestKept) group.className = "kept";
        group.append(element);
        if (kebab(part.pause) === "reset" && nearest(parts, index, 1)) { settle(index); line.append(make("br")); }
      } else if (part.open !== undefined || part.close !== undefined) {
        const sign = edges[kebab(part.open ?? part.close)]?.[part.open !== undefined ? 0 : 1];
        if (sign && part.open !== undefined) opening += sign;
        else if (sign) group.append(sign);
      } else if (part.direction !== undefined) {
        settle(index);
        element = drawDirection(part);
        line.append(element, " ");
      } else if (part.text) {
        for (const piece of part.text.split(/(\s+)/)) {
          if (piece.trim() === "") { blank = piece ? " " : blank; continue; }
          if (blank) settle(index);
          group.append(piece);
        }
      }
      if (element) element.dataset.part = index;
    });
    return line;
  }

  // A thought as a reader sees it. `before` is the thought above, if any: a speaker is named where
  // the voice changes. Elements of parts carry their index in `data-part`.
  function thought(script, thought, before) {
    const element = make("div", { class: `thought ${thought.kind}`, "data-id": thought.id, dir: "auto" });
    if (thought.spare) element.classList.add("spare");
    if (thought.speaker) {
      const voice = script.speakers.indexOf(thought.speaker);
      element.dataset.voice = voice < 0 ? "all" : voice % 4;
      if (!before || before.speaker !== thought.speaker) element.append(make("p", "speaker", thought.speaker));
    }
    if (thought.spare) element.append(make("p", "label", "may be dropped"));
    const words = drawParts(thought.parts);
    if (thought.marker) words.prepend(make("span", "marker", /\d/.test(thought.marker) ? thought.marker : "\u2013"));
    element.append(words);
    return element;
  }

  function heading(section) {
    const target = section.target ? make("span", "budget", budget(section.target)) : null;
    return make(`h${Math.min(section.level + 1, 6)}`, "section", section.name, target);
  }

  // Sections whose heading stands right above a thought; `before` is the thought above, if any.
  function sectionsBefore(script, thought, before) {
    const above = before ? before.section : -1;
    return script.sections.filter((_, section) => section > above && section <= thought.section);
  }

  // --- times -----------------------------------------------------------------------------------

  // 104.1 is 1:44; an hour and more 1:02:03. Seconds are cut, not rounded, as a clock's are.
  function clock(seconds) {
    const whole = Math.max(0, Math.floor(seconds + 1e-6));
    const two = (number) => String(number).padStart(2, "0");
    const minutes = Math.floor(whole / 60);
    return minutes < 60 ? `${minutes}:${two(whole % 60)}` : `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(whole % 60)}`;
  }

  // A target as its writer thinks of it: 1:50-2:10, or 2:00 max where there is no lower end.
  function budget(target) {
    if (target.low > 0 && target.low < target.high) return `${clock(target.low)}-${clock(target.high)}`;
    return target.low > 0 ? clock(target.high) : `${clock(target.high)} max`;
  }

  // --- what is kept ----------------------------------------------------------------------------

  // Values by name in this browser; a browser that keeps nothing is as good as one that is new.
  function store(name) {
    const key = `sayline ${name}`;
    return {
      get() {
        try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
      },
      set(value) {
        try { localStorage.setItem(key, JSON.stringify(value)); } catch { /* full, or forbidden */ }
      },
    };
  }

  return { read, make, thought, heading, sectionsBefore, clock, budget, store };
})();

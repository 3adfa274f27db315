// The text on the stage. Only what is near the place is in the document, so that an hour of script
// is as light as a minute; each thought is measured once a layout. Where the text stands is a
// function of script time alone: hold, trim and jumps cannot drift.

// `stage` holds `layer`, which is moved.
function makeText(stage, layer, script, timeline) {
  const blocks = new Map(); // index in timeline.run -> { element, top, height, lines, shapes }
  let first = 0, last = -1; // those in the document
  let now = -1;
  let line = 0; // where the spoken line stands, in pixels from the stage's top
  let room = 0; // the stage's height

  // --- blocks ------------------------------------------------------------------------------------

  function draw(index) {
    const { thought } = timeline.run[index];
    const before = index > 0 ? timeline.run[index - 1].thought : null;
    const drawn = drawing.thought(script, thought, before);
    const element = drawing.make("div", "block", ...drawing.sectionsBefore(script, thought, before).map(drawing.heading), drawn);
    element.dataset.index = index;
    if (index === now) element.classList.add("now");
    return { element, drawn };
  }

  // Lines of a thought: their height in the block and the times of their words, from its start.
  function measure(block, index) {
    const { thought } = timeline.run[index];
    const offset = block.drawn.offsetTop;
    const lines = [];
    let lowest = -Infinity;
    block.shapes = [];
    for (const element of block.drawn.querySelectorAll("[data-part]")) {
      const part = thought.parts[element.dataset.part];
      if (part.word === undefined) { block.shapes.push({ element, part }); continue; }
      const top = element.offsetTop, height = element.offsetHeight;
      if (top > lowest + height * 0.6) {
        lines.push({ y: offset + top + height / 2, words: [] });
        lowest = top;
      }
      lines[lines.length - 1].words.push(part);
    }
    const words = block.drawn.querySelector(".words");
    block.step = parseFloat(getComputedStyle(words).lineHeight);
    if (!lines.length) lines.push({ y: offset + words.offsetTop + block.step / 2, words: [] });
    block.lines = lines;
    block.height = block.element.offsetHeight;
  }

  function mount(index, above) {
    const block = draw(index);
    blocks.set(index, block);
    if (above) layer.prepend(block.element); else layer.append(block.element);
    measure(block, index);
    const next = blocks.get(index + 1), previous = blocks.get(index - 1);
    block.top = above && next ? next.top - block.height : previous ? previous.top + previous.height : 0;
    block.element.style.top = `${block.top}px`;
  }

  function unmount(index) {
    blocks.get(index).element.remove();
    blocks.delete(index);
  }

  // At most one new block a call where there is text enough on the stage: that fits into a frame.
  function mountAround(index) {
    if (!blocks.has(index)) {
      for (const each of [...blocks.keys()]) unmount(each);
      mount(index, false);
      first = last = index;
    }
    const top = () => blocks.get(first).top, bottom = () => blocks.get(last).top + blocks.get(last).height;
    const here = blocks.get(index);
    const seenTop = here.top - line, seenBottom = here.top + here.height + room - line;
    while (last + 1 < timeline.run.length && bottom() < seenBottom) mount(++last, false);
    while (first > 0 && top() > seenTop) mount(--first, true);
    if (last + 1 < timeline.run.length && bottom() < seenBottom + room) mount(++last, false);
    else if (first > 0 && top() > seenTop - room) mount(--first, true);
    while (last > index && blocks.get(last).top > seenBottom + 3 * room) unmount(last--);
    while (first < index && blocks.get(first).top + blocks.get(first).height < seenTop - 3 * room) unmount(first++);
  }

  // --- where the text stands ---------------------------------------------------------------------

  function firstLine(index) {
    const block = blocks.get(index);
    return block.top + block.lines[0].y;
  }

  // The next thought that takes time; -1 behind the last.
  function nextTimed(index) {
    let next = index + 1;
    while (next < timeline.run.length && timeline.run[next].thought.seconds === 0) next++;
    return next < timeline.run.length && blocks.has(next) ? next : -1;
  }

  // [seconds from the thought's start, height in the layer]: between two of them the text moves
  // evenly. A line moves up while its words are spoken and stands still in every pause.
  function path(index) {
    const block = blocks.get(index);
    if (block.path) return block.path;
    const { thought } = timeline.run[index];
    const next = nextTimed(index);
    const nextStart = next < 0 ? thought.seconds : timeline.run[next].start - timeline.run[index].start;
    const nextY = next < 0 ? null : firstLine(next);
    const closing = nextY !== null && nextStart - thought.seconds < 0.3; // no gap to move in
    const silent = !block.lines[0].words.length;
    const points = [[0, firstLine(index)]];
    const stand = (at) => points.push([at, points[points.length - 1][1]]);
    block.lines.forEach((each, at) => {
      const from = block.top + each.y;
      const below = block.lines[at + 1];
      const to = below ? block.top + below.y : closing ? nextY : from + block.step;
      const spoken = each.words.reduce((sum, word) => sum + word.seconds, 0) || 1;
      let done = 0;
      for (const word of each.words) {
        points.push([word.at, from + ((to - from) * done) / spoken]);
        done += word.seconds;
        points.push([word.at + word.seconds, from + ((to - from) * done) / spoken]);
      }
    });
    // Silence is left in its last third, so that what follows stands ready.
    if (silent) stand(thought.seconds * 0.7);
    else if (!closing) stand(thought.seconds);
    if (nextY !== null) points.push([nextStart, nextY]);
    if (next >= 0) block.path = points; // kept once what follows is measured
    return points;
  }

  function glide(index, t) {
    const points = path(index);
    const since = t - timeline.run[index].start;
    let at = points.findIndex((point) => point[0] > since);
    if (at < 0) return points[points.length - 1][1];
    if (at === 0) return points[0][1];
    const [from, y] = points[at - 1], [to, z] = points[at];
    return to > from ? y + ((z - y) * (since - from)) / (to - from) : z;
  }

  // A whole thought at a time; one that is taller than the stage, as many lines as it has room for.
  function step(index, t) {
    const block = blocks.get(index);
    const since = t - timeline.run[index].start;
    const lines = Math.max(1, Math.floor((0.8 * Math.max(room - line, line)) / block.step));
    let spoken = block.lines.findLastIndex((each) => each.words.length && each.words[0].at <= since + 1e-9);
    spoken = Math.max(spoken, 0);
    return block.top + block.lines[Math.floor(spoken / lines) * lines].y;
  }

  function show(t, gliding) {
    const index = timeline.at(t);
    if (!timeline.run.length) return index;
    mountAround(index);
    if (index !== now) {
      blocks.get(now)?.element.classList.remove("now");
      blocks.get(index).element.classList.add("now");
      now = index;
    }
    const y = gliding ? glide(index, t) : step(index, t);
    layer.style.transform = `translate3d(0, ${(line - y).toFixed(2)}px, 0)`;
    return index;
  }

  return {
    show,
    // After a change of size or type: everything is measured anew.
    layOut(lineAt) {
      room = stage.clientHeight;
      line = room * lineAt;
      for (const index of [...blocks.keys()]) unmount(index);
    },
    clear() { layer.replaceChildren(); blocks.clear(); },
    // The shape of what is held at `t`, if it is on the stage.
    heldShape(index, t) {
      const since = t - timeline.run[index].start;
      return blocks.get(index)?.shapes.find(({ part }) => part.seconds > 0 && part.at <= since + 1e-9 && since < part.at + part.seconds);
    },
    // Script time of a place that lies so many pixels below the spoken line.
    timeBelow(t, pixels) {
      let index = timeline.at(t);
      const goal = glide(index, t) + pixels;
      const inside = () => firstLine(index) <= goal && (nextTimed(index) < 0 || firstLine(nextTimed(index)) > goal);
      while (!inside()) {
        const on = firstLine(index) > goal ? -1 : 1;
        let other = index + on;
        while (blocks.has(other) && timeline.run[other].thought.seconds === 0) other += on;
        if (!blocks.has(other)) break;
        index = other;
      }
      const points = path(index);
      const at = points.findIndex((point) => point[1] > goal);
      const start = timeline.run[index].start;
      if (at <= 0) return start + (at < 0 ? points[points.length - 1][0] : 0);
      const [from, y] = points[at - 1], [to, z] = points[at];
      return start + from + ((to - from) * (goal - y)) / (z - y);
    },
    mounted: () => blocks.size,
  };
}

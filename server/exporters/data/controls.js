// What is pressed and set on every page: messages, dialogs, forms, a screen that stays on. Dialogs
// are told by their ids, buttons by `data-do` (an act of the page), `data-open` and `data-close`.

const controls = (() => {
  const get = (id) => document.getElementById(id);
  const put = (id, value) => { const element = get(id); if (element.textContent !== value) element.textContent = value; };

  // --- messages ----------------------------------------------------------------------------------

  // Trouble stays until something else is said. `remedy` is a button.
  let quiet = 0;
  function say(message, trouble = false, remedy = null) {
    clearTimeout(quiet);
    const notice = get("notice");
    notice.classList.toggle("trouble", trouble);
    notice.replaceChildren(message, ...(remedy ? [" ", remedy] : []));
    if (message && !trouble) quiet = setTimeout(() => say(""), 12000);
  }

  // --- dialogs -----------------------------------------------------------------------------------

  let byHand = false; // the dialog was opened with mouse or finger
  let home = () => null; // the element that the keys belong to
  let opens = () => {}; // what is done before a dialog opens
  const isOpen = () => document.querySelector("dialog[open]") !== null;

  function goHome() { if (!isOpen()) home()?.focus({ preventScroll: true }); }

  function open(name) {
    for (const other of document.querySelectorAll("dialog[open]")) other.close();
    opens();
    get(name).showModal();
  }

  // `page` says what a page does: act(name), opens(), home().
  function listen(page) {
    ({ home, opens } = page);
    document.addEventListener("click", (event) => {
      const button = event.target.closest("button");
      if (!button) return;
      if (button.dataset.do) page.act(button.dataset.do);
      if (button.dataset.open) { byHand = event.detail > 0; open(button.dataset.open); }
      if (button.dataset.close !== undefined) { event.preventDefault(); button.closest("dialog").close(); }
      // After a press by hand the keys belong to the text again.
      if (button.dataset.do && event.detail > 0) goHome();
    });
    // What was opened by hand leaves the keys to the text: a space bar pressed next must not open it again.
    for (const dialog of document.querySelectorAll("dialog")) {
      dialog.addEventListener("close", () => { if (byHand) goHome(); });
    }
    get("understood").addEventListener("click", () => drawing.store("cautions").set(true));
  }

  // The cautions, at the first visit of a browser to any page. False if they were understood.
  function cautionFirst() {
    if (drawing.store("cautions").get()) return false;
    open("care");
    return true;
  }

  function keyTable(rows) {
    get("keys").append(...rows.flatMap(([key, what]) => [drawing.make("dt", {}, key), drawing.make("dd", {}, what)]));
  }

  // --- forms -------------------------------------------------------------------------------------

  // Fields are named as in `settings`; a change of one is `set(name, value)`. What comes back shows
  // the values as they are now.
  function bind(form, settings, defaults, set) {
    form.addEventListener("input", (event) => {
      const { name, type, value, checked } = event.target;
      if (!(name in defaults)) return;
      const number = type === "number" || typeof defaults[name] === "number";
      const given = type === "checkbox" ? checked : number ? (value === "" ? defaults[name] : Number(value)) : value;
      if (type === "number" && value !== "" && !event.target.checkValidity()) return;
      set(name, given);
    });
    return () => {
      for (const element of form.elements) {
        if (!(element.name in defaults)) continue;
        const value = settings[element.name];
        if (element.type === "checkbox") element.checked = value;
        else if (element !== document.activeElement || element.type === "range") element.value = value ?? "";
        const output = element.closest("label").querySelector("output");
        if (output) output.textContent = `${value}${element.dataset.unit}`;
      }
    };
  }

  // --- the screen --------------------------------------------------------------------------------

  let lock = null, lockWanted = false, lockTold = false;
  async function keepAwake() {
    lockWanted = true;
    if (lock && !lock.released) return;
    try {
      lock = await navigator.wakeLock.request("screen");
    } catch {
      if (!lockTold) say("This screen may go dark by itself: set the device to stay awake.", true);
      lockTold = true;
    }
  }
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && lockWanted) keepAwake();
  });

  return { get, put, say, open, isOpen, listen, cautionFirst, keyTable, bind, keepAwake };
})();

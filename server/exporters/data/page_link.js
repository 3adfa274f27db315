// Between windows of one page: the reading window does all the work, a second one shows where it is
// and passes on what is pressed. From a file some browsers part the windows, so both ways are used
// and what comes twice is taken once.

function makeLink(name, receive) {
  const seen = new Set();
  const channel = typeof BroadcastChannel === "function" ? new BroadcastChannel(`sayline ${name}`) : null;
  const peers = window.opener ? [window.opener] : [];

  function take(message) {
    if (message?.sayline !== name || seen.has(message.key)) return;
    seen.add(message.key);
    if (seen.size > 200) seen.delete(seen.values().next().value);
    receive(message);
  }
  if (channel) channel.onmessage = (event) => take(event.data);
  window.addEventListener("message", (event) => { if (peers.includes(event.source)) take(event.data); });

  return {
    send(message) {
      const whole = { ...message, sayline: name, key: Math.random().toString(36).slice(2) };
      channel?.postMessage(whole);
      // A page opened from a file has no origin to name; it says nothing but where the reading is.
      for (const peer of peers) if (!peer.closed) peer.postMessage(whole, "*");
    },
    add(peer) { if (peer && !peers.includes(peer)) peers.push(peer); },
  };
}

// The page as `sayline page --live` serves it hears of every save.
function listenForSaves(adopt, trouble) {
  if (document.documentElement.dataset.live !== "yes" || typeof EventSource !== "function") return;
  const events = new EventSource("events");
  let lost = false;
  events.addEventListener("script", (event) => { adopt(event.data); lost = false; });
  events.addEventListener("trouble", (event) => trouble(JSON.parse(event.data)));
  events.onerror = () => {
    if (!lost) trouble("The program that keeps this page up to date does not answer; the page stays as it is.");
    lost = true;
  };
}

// Takes of one's own voice. Sound goes from the microphone into the memory of this page and, if it
// is saved, into a file; it goes nowhere else. Nothing here begins by itself.

// In the order of what plays in most places.
const soundTypes = [["audio/webm;codecs=opus", "webm"], ["audio/mp4", "m4a"], ["audio/ogg;codecs=opus", "ogg"]];

const refusals = {
  NotAllowedError: "The browser did not give the microphone. Allow it for this page beside the page's address, then press Record again.",
  NotFoundError: "No microphone was found. Plug one in, then press Record again.",
  NotReadableError: "The microphone is held by another program. Close that one, then press Record again.",
};

// `page` is told by changed(), kept({ sound, ending, seconds }) and refused(message).
function makeRecorder(page) {
  let state = "idle"; // then asking, recording, ending
  let recorder = null, begun = 0;

  function become(next) { state = next; page.changed(); }

  async function start() {
    if (state !== "idle") return;
    if (!navigator.mediaDevices?.getUserMedia || typeof MediaRecorder !== "function") {
      page.refused("This browser cannot record here. Record with the device's own recorder; the exercises work as they are.");
      return;
    }
    become("asking");
    let stream = null;
    try {
      // Takes are compared, so the browser must not even them out.
      const plain = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
      stream = await navigator.mediaDevices.getUserMedia({ audio: plain });
      record(stream);
    } catch (error) {
      release(stream);
      become("idle");
      page.refused(refusals[error.name] ?? "The microphone cannot be used here. Record with the device's own recorder; the exercises work as they are.");
    }
  }

  function release(stream) { for (const track of stream?.getTracks() ?? []) track.stop(); }

  function record(stream) {
    const [type, ending] = soundTypes.find(([each]) => MediaRecorder.isTypeSupported(each)) ?? ["", "webm"];
    const pieces = [];
    recorder = new MediaRecorder(stream, type ? { mimeType: type } : {});
    recorder.ondataavailable = (event) => { if (event.data.size) pieces.push(event.data); };
    // It also stops when the microphone is unplugged: what there is, is kept.
    recorder.onstop = () => {
      release(stream);
      const seconds = elapsed();
      become("idle");
      if (pieces.length) page.kept({ sound: new Blob(pieces, { type: recorder.mimeType }), ending, seconds });
      else page.refused("Nothing was recorded. See that the microphone is switched on, then press Record again.");
    };
    recorder.start(1000); // a piece a second, so that little is lost if it breaks off
    begun = performance.now();
    become("recording");
  }

  const elapsed = () => (performance.now() - begun) / 1000;

  return {
    start,
    stop() {
      if (state !== "recording") return;
      become("ending");
      if (recorder.state !== "inactive") recorder.stop();
    },
    state: () => state,
    elapsed,
  };
}

// A name that every system takes for a file.
function fileName(title, rest) {
  const plain = (title || "Script").replace(/[\\/:*?"<>|\p{C}]+/gu, " ").replace(/\s+/g, " ").trim().replace(/^\.+|\.+$/g, "");
  return `${[...plain].slice(0, 80).join("") || "Script"}, ${rest}`;
}

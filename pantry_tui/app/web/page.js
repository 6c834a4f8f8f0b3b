// A phone's hand: keys for those who have none, a finger that scrolls, a keyboard only when asked.
(function () {
  "use strict";
  let socket = null, size = { width: 80, height: 24 };
  const Native = window.WebSocket;
  // The toolkit's script opens the socket; the keys speak through the same one.
  window.WebSocket = class extends Native {
    constructor(...words) {
      super(...words);
      socket = this;
      this.addEventListener("open", () => glass().focus({ preventScroll: true }));
      this.addEventListener("message", (event) => heard(event.data));
    }
    send(text) {
      if (typeof text === "string" && text.startsWith('["resize"')) size = JSON.parse(text)[1];
      super.send(text);
    }
  };
  // Escape in the long form: a lone one followed by a letter would be Alt with that letter.
  const SENT = { Esc: "\x1b[27u", Enter: "\r", Space: " ", "\u2190": "\x7f",
                 "\u2191": "\x1b[A", "\u2193": "\x1b[B" };
  const HELD_MS = 450, AGAIN_MS = 90;  // a held arrow goes on
  const coarse = () => !matchMedia("(hover: hover) and (pointer: fine)").matches;
  // What the browser types into.
  const glass = () => document.querySelector(".xterm-helper-textarea");
  const send = (text) => {
    if (socket && socket.readyState === Native.OPEN) socket.send(JSON.stringify(["stdin", text]));
  };
  const refit = () => window.dispatchEvent(new Event("resize"));

  // The app says when a line is typed in it: the letters come by themselves, and go again.
  function heard(data) {
    if (typeof data !== "string") return;
    const [kind, typed] = JSON.parse(data);
    if (kind === "types" && coarse()) letters(typed);
  }

  const board = () => document.querySelector("#keys");

  function letters(shown) {
    board().classList.toggle("-letters", shown);
    shift(false);
    if (!shown && board().classList.contains("-own")) own(false);
    refit();
  }

  function shift(on) {
    board().classList.toggle("-shift", on);
    for (const one of board().querySelectorAll("[data-key]")) {
      one.textContent = on ? one.dataset.shift : one.dataset.key;
    }
  }

  function own(on) {
    board().classList.toggle("-own", on);
    const text = glass();
    // Without it a phone would lift its keyboard over the list at each tap.
    text.inputMode = on ? "text" : "none";
    text.blur();
    text.focus({ preventScroll: true });
  }

  function press(button) {
    const label = button.textContent;
    send(SENT[label] || label);
    if (board().classList.contains("-shift")) shift(false);
  }

  function keys() {
    let held = 0;
    const let_go = () => { clearTimeout(held); clearInterval(held); };
    board().addEventListener("pointerdown", (event) => {
      event.preventDefault(); // the focus stays where it was
      const button = event.target.closest("[data-key]");
      if (!button) return;
      let_go();
      press(button);
      if ("\u2191\u2193\u2190".includes(button.dataset.key)) {
        held = setTimeout(() => { held = setInterval(press, AGAIN_MS, button); }, HELD_MS);
      }
    });
    for (const end of ["pointerup", "pointercancel", "pointerleave"]) {
      board().addEventListener(end, let_go);
    }
    board().addEventListener("contextmenu", (event) => event.preventDefault());
    board().addEventListener("click", (event) => {
      const does = event.target.closest("[data-do]");
      if (!does) return;
      const is = (name) => board().classList.contains(name);
      if (does.dataset.do === "letters") letters(!is("-letters"));
      if (does.dataset.do === "shift") shift(!is("-shift"));
      if (does.dataset.do === "own") own(!is("-own"));
    });
  }

  // A finger drawn over the list turns the wheel, a notch for each two lines, which is how far a
  // notch scrolls; a tap stays a tap.
  function swipes(terminal) {
    terminal.addEventListener("touchstart", (event) => {
      if (event.touches.length !== 1) return;
      const box = terminal.querySelector(".xterm-screen").getBoundingClientRect();
      const line = box.height / size.height, start = event.touches[0];
      const column = Math.floor((start.clientX - box.left) / (box.width / size.width)) + 1;
      const row = Math.floor((start.clientY - box.top) / line) + 1;
      // The list paints itself anew under the finger: what was touched may be gone from the page,
      // and is still the only one that hears of it.
      const touched = event.target, listening = new AbortController();
      const heard = { passive: false, signal: listening.signal };
      let turned = 0;
      touched.addEventListener("touchmove", (event) => {
        if (event.touches.length !== 1) return;
        const notches = Math.trunc((start.clientY - event.touches[0].clientY) / line / 2);
        for (; turned < notches; turned++) send(`\x1b[<65;${column};${row}M`);
        for (; turned > notches; turned--) send(`\x1b[<64;${column};${row}M`);
        if (event.cancelable) event.preventDefault();
      }, heard);
      touched.addEventListener("touchend", (event) => {
        listening.abort();
        if (turned && event.cancelable) event.preventDefault(); // it was no tap
      }, heard);
      touched.addEventListener("touchcancel", () => listening.abort(), heard);
    }, { passive: true });
  }

  document.addEventListener("DOMContentLoaded", () => {
    const terminal = document.querySelector("#terminal");
    if (!terminal) return;
    if ("fits" in terminal.dataset) {
      // A letter is as wide as 0.6 of its size.
      const fits = Math.floor(window.innerWidth / 40 / 0.6 * 4) / 4;
      terminal.dataset.fontSize = Math.max(8, Math.min(16, fits));
    }
    keys();
    swipes(terminal);
    // The toolkit's script makes it a little later.
    new MutationObserver((_, seen) => {
      if (!glass()) return;
      seen.disconnect();
      if (coarse()) glass().inputMode = "none";
    }).observe(terminal, { childList: true, subtree: true });
    // Where a keyboard covers the page instead of making it smaller.
    const room = window.visualViewport;
    if (room) {
      room.addEventListener("resize", () => {
        if (room.scale > 1.01) return; // zoomed in: the page is as large as it was
        document.body.style.height = `${room.height}px`;
        refit();
      });
    }
  });
})();

// Keys for those who have none: each button sends what the key would.
(function () {
  "use strict";
  let socket = null;
  const Native = window.WebSocket;
  // The toolkit's script opens the socket; the buttons speak through the same one.
  window.WebSocket = class extends Native {
    constructor(...words) {
      super(...words);
      socket = this;
    }
  };
  const SENT = { Esc: "\x1b", Enter: "\r", Tab: "\t", Space: " ", "\u2190": "\x7f",
                 "\u2191": "\x1b[A", "\u2193": "\x1b[B" };
  document.addEventListener("DOMContentLoaded", () => {
    const keys = document.querySelector("#keys");
    if (!keys) return;
    keys.addEventListener("pointerdown", (event) => {
      const label = event.target.dataset && event.target.dataset.key;
      if (!label) return;
      event.preventDefault(); // the focus stays where it was
      if (socket && socket.readyState === Native.OPEN) {
        socket.send(JSON.stringify(["stdin", SENT[label] || label]));
      }
    });
  });
})();

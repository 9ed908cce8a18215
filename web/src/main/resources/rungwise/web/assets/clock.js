// Tells the server what the clock of this browser says, so that a wrong one of the server is found.
"use strict";

(() => {
  const csrf = document.querySelector("header input[name=_csrf]");
  if (csrf) {
    fetch("/clock/browser", {
      method: "POST",
      body: new URLSearchParams({ _csrf: csrf.value, now: String(Date.now()) }),
    }).catch(() => {
      // The server is asked again with the next page.
    });
  }
})();

// Prints a page that was asked for on paper. It was made for that, so its time is that of printing.
"use strict";

(() => {
  const here = new URL(location.href);
  if (!here.searchParams.has("paper")) {
    return;
  }
  here.searchParams.delete("paper");
  history.replaceState(null, "", here);
  window.addEventListener("load", () => window.print());
})();

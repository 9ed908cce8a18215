// Looks from time to time whether a list has changed, and shows it anew. It can be stopped; it never
// takes a page away under somebody who types, and it is no use of a session.
"use strict";

(() => {
  const SECONDS = 20;
  const QUIET = { headers: { "Rungwise-Refresh": "yes" } };
  let isStopped = false;

  const box = () => document.querySelector("[data-refresh]");
  const answer = () => document.querySelector("main h1")?.textContent ?? "";

  const say = () => {
    const at = box();
    if (at) {
      at.hidden = false;
      at.querySelector("button").textContent = isStopped ? "Go on" : "Stop it";
      at.querySelector("span").textContent = isStopped
        ? "Shown as it was when you stopped it."
        : "This page shows by itself what changes.";
    }
  };

  // A form control that holds the focus, or a part that was unfolded, is being worked on.
  const isInUse = () => {
    const main = document.querySelector("main");
    const held = document.activeElement;
    return (
      (main.contains(held) && held.matches("input, select, textarea")) ||
      main.querySelector("details[open]") !== null
    );
  };

  const show = (text) => {
    const next = new DOMParser().parseFromString(text, "text/html");
    const main = next.querySelector("main");
    if (!main || !next.querySelector("[data-refresh]")) {
      return;
    }
    const before = answer();
    const held = document.activeElement?.getAttribute("href");
    document.querySelector("main").replaceChildren(...main.childNodes);
    document.title = next.title;
    say();
    if (held) {
      document.querySelector(`main a[href="${CSS.escape(held)}"]`)?.focus();
    }
    if (answer() !== before) {
      box().querySelector("[role=status]").textContent = answer();
    }
  };

  const look = async () => {
    const at = box();
    if (!at || isStopped || document.hidden || isInUse()) {
      return;
    }
    const now = await fetch("/changes", QUIET);
    if (now.redirected || now.status === 401 || now.status === 403) {
      location.reload(); // nobody is signed in any more: the names go from the screen
      return;
    }
    if (now.ok && (await now.text()) !== at.dataset.refresh) {
      const page = await fetch(location.href, QUIET);
      if (page.ok && !isStopped && !isInUse()) {
        show(await page.text());
      }
    }
  };

  document.addEventListener("click", (event) => {
    if (event.target.closest("[data-refresh] button")) {
      isStopped = !isStopped;
      say();
    }
  });
  say();
  setInterval(() => look().catch(() => {}), SECONDS * 1000);
})();

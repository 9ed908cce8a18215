// Counts how long an erection lasts, and shows what to do. It asks the server for nothing, so it
// goes on when the server does not answer. What it counts only ever grows: a clock that is set
// back never makes a page calm again.
"use strict";

(() => {
  const call = document.getElementById("call");
  if (!call) {
    return;
  }
  const MINUTE = 60000;
  const HOUR = 60 * MINUTE;
  const DAY = 24 * HOUR;
  const DIFFERS = 2 * MINUTE;
  const LOOK = 500;
  const LONG = Number(call.dataset.long) * MINUTE;
  const EMERGENCY = Number(call.dataset.emergency) * MINUTE;
  const OFFSETS = call.dataset.offsets.split(",").map((pair) => pair.split(":").map(Number));
  const DAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];

  // The clock: what the server said, or this device if that is later, and what has passed since
  // by whichever of two clocks has seen more of it.
  let wall = Date.now();
  let steady = performance.now();
  let now = Math.max(Number(call.dataset.now), wall);
  const differs = Math.abs(Number(call.dataset.now) - wall) > DIFFERS;

  function tick() {
    const wallNow = Date.now();
    const steadyNow = performance.now();
    now += Math.max(wallNow - wall, steadyNow - steady, 0);
    wall = wallNow;
    steady = steadyNow;
  }

  // Times as the clinic's clocks show them.
  const offsetAt = (at) =>
    OFFSETS.reduce((last, [from, offset]) => (from <= at ? offset : last), OFFSETS[0][1]);
  const local = (at) => new Date(at + offsetAt(at) * MINUTE);
  const dayOf = (at) => Math.floor((at + offsetAt(at) * MINUTE) / DAY);
  const two = (number) => String(number).padStart(2, "0");

  function clock(at) {
    const shown = local(at);
    const time = two(shown.getUTCHours()) + ":" + two(shown.getUTCMinutes());
    const days = dayOf(at) - dayOf(now);
    const words = { "0": "", "-1": "yesterday ", "1": "tomorrow " };
    return (words[days] ?? DAYS[shown.getUTCDay()] + " ") + time;
  }

  function span(length) {
    const minutes = Math.floor(length / MINUTE);
    const hours = Math.floor(minutes / 60);
    const rest = minutes % 60;
    const parts = [];
    if (hours > 0) {
      parts.push(hours + "\u00a0h");
    }
    if (rest > 0 || hours === 0) {
      parts.push(rest + "\u00a0min");
    }
    return parts.join(" ");
  }

  // The earlier one where the clocks showed a time twice.
  function instantOf(day, hours, minutes) {
    const shown = day * DAY + hours * HOUR + minutes * MINUTE;
    const candidates = OFFSETS.map(([, offset]) => [shown - offset * MINUTE, offset]);
    const real = candidates.filter(([at, offset]) => offsetAt(at) === offset);
    return Math.min(...(real.length > 0 ? real : candidates).map(([at]) => at));
  }

  // What is said.
  const form = document.getElementById("call-form");
  const field = form?.elements.namedItem("time");

  // With a man's record open, what is said is written down by the server, and only shown here.
  const isWritten = form?.dataset.written === "yes";
  const list = document.getElementById("said-starts");
  const notRead = document.getElementById("not-read");
  // Each start that was said, or "not known", which counts as 4 hours until it is struck.
  const NOT_KNOWN = null;
  const said = [];
  let typed = null;
  let softAs = null;
  let shown = call.dataset.view;

  const OF_24 = /^([01][0-9]|2[0-3])[:.]?([0-5][0-9])$/;
  const OF_12 = /^(0?[1-9]|1[0-2])(?:[:.]?([0-5][0-9]))? ?([ap])\.?m\.?$/;

  function instant(typed, isYesterday) {
    const text = typed.trim().toLowerCase();
    const of24 = OF_24.exec(text);
    const of12 = OF_12.exec(text);
    if (!of24 && !of12) {
      return null;
    }
    const hours = of24 ? Number(of24[1]) : (Number(of12[1]) % 12) + (of12[3] === "p" ? 12 : 0);
    const minutes = Number(of24 ? of24[2] : of12[2] ?? 0);
    const today = dayOf(now);
    const at = instantOf(isYesterday ? today - 1 : today, hours, minutes);
    return at > now ? instantOf(today - 1, hours, minutes) : at;
  }

  const read = () =>
    instant(field.value, form.elements.namedItem("day").value === "yesterday");

  // For the log of a rescue on the same page, so that both go by one clock.
  call.clock = {
    now: () => {
      tick();
      return now;
    },
    words: clock,
    instant: (text) => instant(text, false),
    span,
  };

  function keep() {
    if (typed !== null && !said.some((one) => one.at === typed && !one.struck)) {
      said.push({ at: typed, struck: false });
    }
    typed = null;
    remember();
  }

  const counting = () => said.filter((one) => !one.struck).map((one) => one.at);
  const isNotKnown = () => counting().includes(NOT_KNOWN);

  // The earliest that was said and not struck.
  function start() {
    const starts = [...counting(), typed].filter((at) => at !== NOT_KNOWN);
    return starts.length > 0 ? Math.min(...starts) : null;
  }

  // Kept in the address behind the sign that no browser sends.
  function remember() {
    const kept = counting()
      .map((at) => at ?? "unknown")
      .join(",");
    if (form && !isWritten) {
      history.replaceState(null, "", location.pathname + (kept ? "#since=" + kept : ""));
    }
  }

  function recall() {
    const kept = /^#since=((?:[0-9]+|unknown)(?:,(?:[0-9]+|unknown))*)$/.exec(location.hash);
    (kept ? kept[1].split(",") : [])
      .map((word) => (word === "unknown" ? NOT_KNOWN : Number(word)))
      .filter((at) => at === NOT_KNOWN || at <= now)
      .forEach((at) => said.push({ at, struck: false }));
  }

  // What is shown.
  function stage(since) {
    if (since === null && !isNotKnown()) {
      return "nothing-said";
    }
    if (isNotKnown() || since > now || call.dataset.wrong === "yes") {
      return "emergency";
    }
    const length = now - since;
    return length >= EMERGENCY ? "emergency" : length >= LONG ? "long" : "early";
  }

  function view() {
    const firm = stage(start());
    const isSoft = form?.elements.namedItem("firm")?.value === "soft";
    if (!isSoft || firm === "nothing-said") {
      softAs = null;
      return firm;
    }
    softAs ??= firm === "emergency" ? "soft-late" : "soft";
    return softAs;
  }

  function say(name, words) {
    call.querySelectorAll(`[data-say="${name}"]`).forEach((one) => {
      if (one.textContent !== words) {
        one.textContent = words;
      }
    });
  }

  function when(name, holds) {
    document.querySelectorAll(`[data-when="${name}"]`).forEach((one) => {
      one.hidden = !holds;
    });
  }

  function count(since) {
    const isCounted = since !== null && since <= now && call.dataset.wrong !== "yes";
    when("counted", isCounted);
    when("not-counted", !isCounted || isNotKnown());
    if (!isCounted) {
      return;
    }
    const left = since + EMERGENCY - now;
    say("elapsed", span(now - since));
    say("start", clock(since));
    say("two-hours", clock(since + LONG));
    say("four-hours", clock(since + EMERGENCY));
    say("to-four", left > 0 ? "in " + span(left) : span(-left) + " ago");
  }

  function draw(since) {
    const scale = call.querySelector(".hour-scale");
    const first = Number(scale.dataset.first);
    const hour = Number(scale.dataset.hour);
    const hours = since === null ? 0 : Math.max(0, Math.min((now - since) / HOUR, 6));
    scale.querySelector(".filled").setAttribute("width", hours * hour + "%");
    scale.querySelector(".now").setAttribute("x", first + hours * hour + "%");
  }

  // Home measures are gone from the moment at which nobody can say that it is less than 4 hours.
  function steps(isEmergency) {
    document.querySelectorAll("[data-step]").forEach((one) => {
      const hiddenIn = isEmergency ? "BEFORE_FOUR_HOURS" : "FROM_FOUR_HOURS";
      one.hidden = one.dataset.step === hiddenIn;
    });
  }

  function show() {
    tick();
    const since = start();
    const wanted = view();
    count(since);
    draw(since);
    when("differs", differs);
    call.querySelectorAll("article[data-view]").forEach((one) => {
      one.hidden = one.dataset.view !== wanted;
    });
    steps(!["early", "long"].includes(wanted));
    if (wanted !== shown && wanted === "emergency") {
      call.querySelector('article[data-view="emergency"] h2').focus();
    }
    shown = wanted;
  }

  function starts() {
    list.hidden = said.length < 2 && !said.some((one) => one.at === NOT_KNOWN);
    list.replaceChildren(
      ...said.map((one) => {
        const line = document.createElement("li");
        const words = document.createElement(one.struck ? "s" : "span");
        const what = one.at === NOT_KNOWN ? "nobody knows since when" : clock(one.at);
        words.textContent = "Said: " + what + (one.struck ? ", struck" : "");
        line.append(words);
        if (!one.struck) {
          const strike = document.createElement("button");
          strike.type = "button";
          strike.textContent =
            one.at === NOT_KNOWN
              ? "Strike it: it is known now, or was tapped wrongly"
              : "Strike " + what + ": typed wrongly";
          strike.addEventListener("click", () => {
            one.struck = true;
            remember();
            starts();
            show();
          });
          line.append(strike);
        }
        return line;
      }),
    );
  }

  function take() {
    if (!isWritten) {
      keep();
      starts();
    }
    show();
  }

  if (form) {
    field.addEventListener("input", () => {
      typed = read();
      notRead.hidden = true;
      show();
    });
    field.addEventListener("change", () => {
      typed = read();
      notRead.hidden = typed !== null || field.value.trim() === "";
      take();
    });
    form.addEventListener("change", (event) => {
      if (event.target.name === "day" && field.value.trim() !== "") {
        typed = read();
        take();
      } else {
        show();
      }
    });
  }

  if (form && !isWritten) {
    document.getElementById("show").hidden = true;
    document.getElementById("not-counting").hidden = true;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      if (event.submitter?.id === "not-known") {
        said.push({ at: NOT_KNOWN, struck: false });
        remember();
        starts();
      }
      show();
    });
    recall();
  }
  if (call.dataset.start !== "") {
    said.push({ at: Number(call.dataset.start), struck: false });
  } else if (call.dataset.view === "emergency") {
    said.push({ at: NOT_KNOWN, struck: false });
  }
  if (form && !isWritten) {
    starts();
  }
  show();
  // What was typed before this script was here, or stands in a form that was refused.
  if (form && field.value.trim() !== "") {
    typed = read();
    show();
  }
  setInterval(show, LOOK);
  for (const event of ["visibilitychange", "pageshow", "focus", "resume"]) {
    addEventListener(event, show);
    document.addEventListener(event, show);
  }
})();

// The running log of a rescue of a man whose record is not open. It is kept in this tab of this
// browser alone, asks the server for nothing and goes on when the server does not answer. What was
// given is always written, in any order; what follows from it is counted anew each time.
"use strict";

(() => {
  const part = document.getElementById("rescue-log");
  const counted = document.getElementById("call")?.clock;
  if (!part || !counted) {
    return;
  }
  const MINUTE = 60000;
  const HOUR = 60 * MINUTE;
  const KEPT = "rescue-log";
  const FLOOR = Number(part.dataset.floor) * MINUTE;
  const LIMIT = Number(part.dataset.limit);
  const LEAST = Number(part.dataset.least);
  const MOST = Number(part.dataset.most);
  const DOSE = /^([0-9]{1,4})(?: ?mcg)?$/;
  const PRESSURE = /^[0-9]{2,3}\/[0-9]{2,3}(?:,? (?:pulse )?[0-9]{2,3})?$/;
  const NEXT = document.getElementById("rescue-next");
  const LINES = document.getElementById("rescue-lines");
  const FAULT = document.getElementById("rescue-fault");
  const field = (name) => document.getElementById("rescue-" + name);

  let doses = [];
  try {
    doses = JSON.parse(sessionStorage.getItem(KEPT) ?? "[]");
  } catch {
    doses = [];
  }

  const counting = () =>
    doses.filter((one) => !one.struck).sort((one, other) => one.at - other.at);
  const sum = (some) => some.reduce((all, one) => all + (one.mcg ?? 0), 0);
  const inHour = (at) => counting().filter((one) => one.at <= at && at - one.at <= HOUR);

  function keep() {
    try {
      sessionStorage.setItem(KEPT, JSON.stringify(doses));
    } catch {
      // a browser that keeps nothing still shows what is on the page
    }
    show();
  }

  function flags(dose) {
    const before = counting().filter((one) => one !== dose && one.at <= dose.at);
    const soon = before.filter((one) => dose.at - one.at < FLOOR);
    const words = [];
    if (soon.length > 0) {
      words.push("less than " + FLOOR / MINUTE + " min after the dose before");
      if (sum(soon) + (dose.mcg ?? 0) > MOST) {
        words.push("together " + (sum(soon) + (dose.mcg ?? 0)) + " mcg at once: two halves are one dose");
      }
    }
    if (sum(inHour(dose.at)) > LIMIT) {
      words.push(sum(inHour(dose.at)) + " mcg in the hour up to it, above " + LIMIT + " mcg");
    }
    if (dose.mcg === null) {
      words.push("how much is not known, so that no sum is known");
    } else if (dose.mcg > MOST || dose.mcg < LEAST) {
      words.push("smaller or larger than any published dose");
    }
    return words;
  }

  function line(dose) {
    const item = document.createElement("li");
    const words = document.createElement(dose.struck ? "s" : "span");
    words.textContent =
      counted.words(dose.at) +
      ": phenylephrine " +
      (dose.mcg === null ? "not known how much" : dose.mcg + " mcg") +
      ", " +
      dose.side +
      (dose.pressure ? ", before it " + dose.pressure : "") +
      (dose.second ? ", checked by a second person" : ", checked by nobody");
    item.append(words);
    if (!dose.struck) {
      const told = flags(dose);
      if (told.length > 0) {
        const flag = document.createElement("b");
        flag.className = "fault";
        flag.textContent = told.join("; ");
        item.append(flag);
      }
      const strike = document.createElement("button");
      strike.type = "button";
      strike.textContent = "Strike it: written wrongly";
      strike.addEventListener("click", () => {
        dose.struck = true;
        keep();
      });
      item.append(strike);
    }
    return item;
  }

  function next() {
    const now = counted.now();
    const last = counting().at(-1);
    if (!last) {
      NEXT.textContent = "";
      return;
    }
    const at = last.at + FLOOR;
    const isUnknown = inHour(now).some((one) => one.mcg === null);
    NEXT.textContent =
      (at > now ? "Not before " + counted.words(at) + " at the earliest" : "The shortest interval has passed") +
      ". In the last hour " +
      (isUnknown ? "at least " : "") +
      sum(inHour(now)) +
      " mcg, both sides together; at most " +
      LIMIT +
      " mcg.";
  }

  function show() {
    LINES.replaceChildren(...[...doses].sort((one, other) => other.at - one.at).map(line));
    next();
  }

  function say(words, at) {
    FAULT.textContent = words;
    FAULT.hidden = words === "";
    at?.focus();
  }

  function write() {
    const typed = field("time").value.trim();
    const at = typed === "" ? counted.now() : counted.instant(typed);
    const amount = field("dose").value.trim();
    const read = DOSE.exec(amount);
    const pressure = field("pressure").value.trim();
    if (at === null) {
      say("That time was not read. Write hours and minutes, such as 22:15.", field("time"));
    } else if (amount !== "" && (!read || Number(read[1]) === 0)) {
      say("That dose was not read. Write whole micrograms, such as 200 mcg, or leave it empty.", field("dose"));
    } else if (pressure !== "" && !PRESSURE.test(pressure)) {
      say("That pressure was not read. Write it as 142/88 pulse 61, or leave it empty.", field("pressure"));
    } else {
      say("");
      const sides = field("side").value === "each" ? ["his left", "his right"] : [field("side").value];
      for (const side of sides) {
        doses.push({
          at,
          mcg: read ? Number(read[1]) : null,
          side,
          pressure,
          second: field("second").checked,
          struck: false,
        });
      }
      // Nothing that was said of this dose is said of the next one.
      ["time", "dose", "pressure"].forEach((name) => (field(name).value = ""));
      field("side").selectedIndex = 0;
      field("second").checked = false;
      keep();
    }
  }

  part.hidden = false;
  document.getElementById("rescue-write").addEventListener("click", write);
  show();
  setInterval(next, 1000);
})();

#!/bin/sh
# Measures how long a built Rungwise takes from the start of the process to the first sign-in page,
# five times with the start-up cache and five times without, and how long --help takes. Keeps the
# figures in bench/results/startup-DATE.txt. Needs curl and GNU date.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
server=
trap '[ -z "$server" ] || kill "$server" 2>/dev/null; rm -rf "$work"' EXIT
port=${PORT:-8791}
site=http://127.0.0.1:$port
result=$root/bench/results/startup-$(date +%F).txt
RUNS="1 2 3 4 5"

now() { date +%s%N; }
since() { echo "$1 $(now)" | awk '{ printf "%.2f\n", ($2 - $1) / 1e9 }'; }
median() { sort -n | sed -n 3p; }

start() {
  "$root/rungwise" serve --port "$port" --data "$work/data" >"$work/out" 2>"$work/err" &
  server=$!
}

stop() {
  kill "$server"
  wait "$server" 2>/dev/null || true
  server=
}

# Until a page answers 200.
await() {
  until [ "$(curl -s -o "$work/page" -c "$work/cookies" -w '%{http_code}' "$site$1")" = 200 ]; do
    kill -0 "$server" 2>/dev/null || { cat "$work/err" >&2; exit 1; }
    sleep 0.02
  done
}

# The sign-in page is there once somebody has an account: made as a person does, by the first code.
open_clinic() {
  mkdir "$work/data"
  start
  await /first-start
  until grep -q '^ready' "$work/out"; do sleep 0.1; done
  code=$(sed -n 's/.*one-time code *//p' "$work/out")
  token=$(sed -n 's/.*name="_csrf" value="\([^"]*\)".*/\1/p' "$work/page" | head -n 1)
  curl -s -o /dev/null -b "$work/cookies" --data-urlencode "_csrf=$token" \
    --data-urlencode "code=$code" --data-urlencode "signInName=ana.ruiz" \
    --data-urlencode "fullName=Ana Ruiz" --data-urlencode "password=four quiet words here" \
    "$site/first-start"
  stop
}

measure_page() {
  for run in $RUNS; do
    began=$(now)
    start
    await /sign-in
    since "$began"
    stop
  done
}

measure_help() {
  for run in $RUNS; do
    began=$(now)
    "$root/rungwise" --help >/dev/null
    since "$began"
  done
}

report() {
  echo "$1: $(tr '\n' ' ' <"$2")median $(median <"$2")"
}

"$root/rungwise" --version >/dev/null
open_clinic
measure_page >"$work/cached"
RUNGWISE_CACHE=off
export RUNGWISE_CACHE
measure_page >"$work/uncached"
unset RUNGWISE_CACHE
measure_help >"$work/help"
{
  echo "Seconds from the start of ./rungwise, $(date +%F), $(getconf _NPROCESSORS_ONLN) cores,"
  echo "load of the machine at the end $(cut -d ' ' -f 1 /proc/loadavg 2>/dev/null || echo unknown)"
  report "first sign-in page, with the cache" "$work/cached"
  report "first sign-in page, without it" "$work/uncached"
  report "--help" "$work/help"
} | tee "$result"

#!/bin/sh
# Builds and runs the benchmarks whose name matches a pattern (all, if none is given) and keeps
# the figures: bench/run.sh [pattern]. For more exact figures set BENCH_OPTIONS, for example
# BENCH_OPTIONS="-f 3 -wi 5 -i 10".
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/tools/jdk25.sh"
pattern=${1:-.*}
name=$(printf '%s' "$pattern" | tr -c 'A-Za-z0-9\n' '-' | sed 's/^-*//; s/-*$//')
result=$root/bench/results/${name:-all}.json
SHORT="-f 1 -wi 3 -w 1s -i 5 -r 1s"

"$root/tools/mvn" -q -pl bench -am -Pbenchmarks -DskipTests process-classes >&2
# Word splitting of the options is meant.
# shellcheck disable=SC2086
"$JAVA_HOME/bin/java" -cp "$root/bench/target/classes:$(cat "$root/bench/target/classpath.txt")" \
  org.openjdk.jmh.Main "$pattern" ${BENCH_OPTIONS:-$SHORT} \
  -rf json -rff "$result.new"
# The path of the Java program says nothing about the figures.
sed -e '/"jvm" :/d' "$result.new" > "$result"
rm "$result.new"
echo "The figures are in bench/results/$(basename "$result")." >&2

# Sourced by the launchers: sets JAVA_HOME to a JDK 25, wherever one is found, or says what is missing.
# shellcheck shell=sh

# Each JDK says its version in a file of its own: reading it is far quicker than starting it.
is_jdk25() { [ -x "$1/bin/javac" ] && grep -q '^JAVA_VERSION="25[."]' "$1/release" 2>/dev/null; }

on_path=$(command -v javac 2>/dev/null) && on_path=$(readlink -f "$on_path" 2>/dev/null) || on_path=
for candidate in "${JAVA_HOME:-}" "${on_path%/bin/javac}" /usr/lib/jvm/* /opt/*jdk* \
  /Library/Java/JavaVirtualMachines/*/Contents/Home \
  "${HOME:-}"/.sdkman/candidates/java/* "${HOME:-}"/.jdks/*; do
  if [ -n "$candidate" ] && is_jdk25 "$candidate"; then
    JAVA_HOME=$candidate
    export JAVA_HOME
    break
  fi
done
if ! is_jdk25 "${JAVA_HOME:-/nowhere}"; then
  echo "A JDK 25 was not found (looked in JAVA_HOME, PATH, /usr/lib/jvm, /opt, ~/.sdkman and" >&2
  echo "~/.jdks). Install one, or set JAVA_HOME to the folder of one, and try again." >&2
  exit 2
fi

# Sourced by the launchers: sets JAVA_HOME to a JDK 25, wherever one is found, or says what is missing.
# shellcheck shell=sh
is_jdk25() { [ -x "$1/bin/javac" ] && "$1/bin/java" -version 2>&1 | grep -q 'version "25'; }
for candidate in "${JAVA_HOME:-}" /usr/lib/jvm/* /opt/*jdk* /Library/Java/JavaVirtualMachines/*/Contents/Home \
  "$HOME"/.sdkman/candidates/java/* "$HOME"/.jdks/*; do
  if [ -n "$candidate" ] && is_jdk25 "$candidate"; then
    JAVA_HOME=$candidate
    export JAVA_HOME
    break
  fi
done
if ! is_jdk25 "${JAVA_HOME:-/nowhere}"; then
  echo "A JDK 25 was not found (looked in JAVA_HOME, /usr/lib/jvm, /opt, ~/.sdkman and ~/.jdks)." >&2
  echo "Install one, or set JAVA_HOME to the folder of one, and try again." >&2
  exit 2
fi

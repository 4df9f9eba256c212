#!/bin/sh
# macOS: a double click opens this in a terminal window. Untested so far.
exec sh "$(dirname "$0")/start-lehrcase.sh" "$@"

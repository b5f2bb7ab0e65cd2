#!/bin/sh
# Makes the committed page boxes of boxes.pdf anew. Needs pdfinfo (Debian package poppler-utils). Run from the project's root.
set -eu
dir=src/test/resources/reference/pdfinfo
out=${1:-$dir}
pdfinfo -box -f 1 -l 3 "$dir/boxes.pdf" | grep -E '^Page +[0-9]' > "$out/boxes.txt"
{
    echo "tool: $(pdfinfo -v 2>&1 | head -n 1)"
    echo "command: pdfinfo -box -f 1 -l 3 boxes.pdf | grep -E '^Page +[0-9]'"
    echo "date: $(date +%F)"
} > "$out/PROVENANCE.txt"

#!/bin/sh
# Makes the committed separations of the reference page anew: one grey TIFF per ink, 255 = no ink.
# Needs Ghostscript (Debian package ghostscript). Run from the project's root.
# Rendered at four times the resolution and averaged down, which is area coverage to 1/16.
set -eu
dir=src/test/resources/reference/ghostscript
out=${1:-$dir}
set -- gs -q -dBATCH -dNOPAUSE -dSAFER -sDEVICE=tiffsep -r400 -dDownScaleFactor=4 -sCompression=lzw \
    -dOverprint=/enable
"$@" -sOutputFile="$out/planes.tif" "$dir/planes.pdf"
rm -f "$out/planes.tif"
{
    echo "tool: Ghostscript $(gs --version)"
    echo "command: $* -sOutputFile=planes.tif planes.pdf"
    echo "date: $(date +%F)"
} > "$out/PROVENANCE.txt"

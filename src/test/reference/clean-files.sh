#!/bin/sh
# Makes the committed separations of the clean files in their folder anew: one grey TIFF per ink, 255 = no ink.
# Needs Ghostscript (Debian package ghostscript). Run from the project's root.
# Rendered at four times the resolution and averaged down, which is area coverage to 1/16.
set -eu
dir=src/test/resources/reference/clean
out=${1:-$dir}
set -- gs -q -dBATCH -dNOPAUSE -dSAFER -sDEVICE=tiffsep -r288 -dDownScaleFactor=4 -sCompression=lzw \
    -dOverprint=/enable
for pdf in "$dir"/*.pdf; do
    name=$(basename "$pdf" .pdf)
    "$@" -sOutputFile="$out/$name.tif" "$pdf"
    rm -f "$out/$name.tif"
done
{
    echo "files: written by 'inkground knockout' from the cases of CleanFileTest of the same names"
    echo "tool: Ghostscript $(gs --version)"
    echo "command: $* -sOutputFile=NAME.tif NAME.pdf"
    echo "date: $(date +%F)"
} > "$out/PROVENANCE.txt"

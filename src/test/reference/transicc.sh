#!/bin/sh
# Makes the colour references in src/test/resources/inkground/colour with Little CMS (Debian package liblcms2-utils).
# Run from the project's folder: src/test/reference/transicc.sh CMYK-PROFILE
# CMYK-PROFILE is CGATS001Compat-v2-micro.icc (CC0-1.0), which the PDFBox library carries under
# org/apache/pdfbox/resources/icc.
set -eu
profile=${1:?name the CMYK profile}
out=src/test/resources/inkground/colour
version=$(dpkg-query -W -f '${Package} ${Version}' liblcms2-utils)

# Even pseudo-random numbers from a fixed start, so that the inputs are the same on every machine.
numbers() { # rows columns scale decimals
    awk -v rows="$1" -v columns="$2" -v scale="$3" -v places="$4" 'BEGIN {
        state = 12345
        for (r = 0; r < rows; r++) {
            line = ""
            for (c = 0; c < columns; c++) {
                state = (state * 1103515245 + 12345) % 2147483648
                line = line sprintf("%.*f ", places, state / 2147483648 * scale)
            }
            print line
        }
    }'
}

reference() { # name rows columns scale decimals transicc-arguments...
    name=$1; rows=$2; columns=$3; scale=$4; places=$5; shift 5
    {
        echo "# transicc of $version; $(date -u +%Y-%m-%d)"
        echo "# command: transicc $(echo "$*" | sed "s|$profile|CGATS001Compat-v2-micro.icc|")"
        echo "# columns: $columns inputs, then the outputs"
        numbers "$rows" "$columns" "$scale" "$places" > "$out/inputs.tmp"
        transicc "$@" < "$out/inputs.tmp" 2> /dev/null | paste -d ' ' "$out/inputs.tmp" -
        rm "$out/inputs.tmp"
    } > "$out/$name.txt"
}

reference transicc-srgb-to-lab 500 3 255 0 -n -t1 '-i*sRGB' '-o*Lab4'
reference transicc-cmyk-to-lab 1000 4 100 1 -n -t1 "-i$profile" '-o*Lab4'

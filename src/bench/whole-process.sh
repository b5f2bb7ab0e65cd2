#!/usr/bin/env bash
# Whole-process pair: 'inkground separate' beside Ghostscript's tiffsep, both writing uncompressed TIFF planes of the same page
# at the same resolution, from process start to process end. Medians of RUNS runs, the two in turn.
#   src/bench/whole-process.sh [DPI] [FILE...]       (after mvn -B -DskipTests package)
set -euo pipefail
cd "$(dirname "$0")/../.."
dpi=${1:-300}
shift || true
files=("$@")
((${#files[@]})) || files=(demo/regatta-shirt.pdf demo/regatta-poster.pdf)
runs=${RUNS:-5}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
command -v gs > /dev/null || { echo "gs is needed for the pair" >&2; exit 1; }

ours() { target/inkground/bin/inkground separate "$1" --dpi "$dpi" --box media --replace --out "$work/ours"; }
theirs() {
    mkdir -p "$work/theirs"
    gs -q -dSAFER -dNOPAUSE -dBATCH -sDEVICE=tiffsep -sCompression=none -r"$dpi" \
        -dNumRenderingThreads="$(nproc)" -sOutputFile="$work/theirs/page.tif" "$1"
}
millis() {
    local begin end
    begin=$(date +%s%N)
    "$@" > /dev/null 2> "$work/said" || { cat "$work/said" >&2; exit 1; }
    end=$(date +%s%N)
    echo $(((end - begin) / 1000000))
}
median() { sort -n | awk '{ v[NR] = $1 } END { print (NR % 2) ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2 }'; }

echo "$(gs --version) Ghostscript, $(nproc) cores, $dpi dpi, median of $runs runs after one to warm the disk cache"
printf '%-28s %14s %14s %8s\n' file 'inkground ms' 'tiffsep ms' ratio
for file in "${files[@]}"; do
    ours "$file" > /dev/null
    theirs "$file" > /dev/null
    a=() b=()
    for ((i = 0; i < runs; i++)); do
        a+=("$(millis ours "$file")")
        b+=("$(millis theirs "$file")")
    done
    x=$(printf '%s\n' "${a[@]}" | median)
    y=$(printf '%s\n' "${b[@]}" | median)
    printf '%-28s %14s %14s %8s\n' "$(basename "$file")" "$x" "$y" "$(awk "BEGIN { printf \"%.2f\", $x / $y }")"
done

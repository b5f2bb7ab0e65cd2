#!/bin/sh
# Makes the pictures of src/test/resources/reference/pictures and their samples as ImageMagick reads them.
# Run in the project's folder: src/test/reference/imagemagick.sh
set -e
out=src/test/resources/reference/pictures
mkdir -p "$out"
art="-size 24x24 gradient:#C5242E-#FCEFCE ( -size 24x24 radial-gradient:#1C304F-#3F7A5C ) -compose blend -define compose:args=50 -composite"
convert $art -colorspace CMYK -depth 8 -compress zip "$out/cmyk8.tif"
convert $art -colorspace CMYK -depth 16 -compress lzw "$out/cmyk16.tif"
convert $art -colorspace CMYK -interlace plane -depth 16 -compress none "$out/planar16.tif"
convert $art -colorspace CMYK -quality 95 -sampling-factor 1x1 "$out/cmyk.jpg"
convert $art -colorspace Lab -depth 8 -compress none "$out/lab8.tif"
for name in cmyk8.tif cmyk16.tif planar16.tif cmyk.jpg; do
    convert "$out/$name" -depth 16 -endian MSB "cmyk:$out/$name.raw"
done
convert "$out/lab8.tif" -set colorspace sRGB -depth 16 -endian MSB "rgb:$out/lab8.tif.raw"
{
    echo "Samples of the pictures beside this file as ImageMagick reads them: 16 bits, highest byte first, row by row."
    echo "Lab: L* is 100 v / 65535; a* and b* are 255 (v / 65535 - 1/2)."
    echo "Made by: src/test/reference/imagemagick.sh"
    convert --version | head -1
    date -u +%Y-%m-%d
} >"$out/PROVENANCE.txt"

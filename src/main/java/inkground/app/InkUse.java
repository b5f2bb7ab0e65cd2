package inkground.app;

import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import java.util.ArrayList;
import java.util.List;

/**
 * How much of an ink a region uses.
 *
 * @param ink which
 * @param coveredCm2 area on the product where its tint is above none, in cm²
 * @param meanTint mean of its tint over the whole region, 0 to 1
 */
public record InkUse(Ink ink, double coveredCm2, double meanTint) {
    /** Adds up the planes of a region handed over in parts. Not thread-safe. */
    public static final class Sum {
        private long[] covered = new long[0];
        private long[] tints = new long[0];
        private long pixels;
        private double pxPerPt = 1;
        private List<Ink> inks = List.of();

        /** Adds one part; all parts are of one job and one scale. */
        public void add(InkPlanes part) {
            if (covered.length == 0) {
                covered = new long[part.inks().size()];
                tints = new long[part.inks().size()];
                inks = part.inks().inks();
                pxPerPt = part.request().pxPerPt();
            }
            pixels += (long) part.width() * part.height();
            for (int p = 0; p < covered.length; p++) {
                for (int cy = 0; cy < part.cellsDown(); cy++) {
                    for (int cx = 0; cx < part.cellsAcross(); cx++) {
                        cell(part, p, cx, cy);
                    }
                }
            }
        }

        private void cell(InkPlanes part, int p, int cx, int cy) {
            int w = Math.min(InkPlanes.CELL_W, part.width() - cx * InkPlanes.CELL_W);
            int h = Math.min(InkPlanes.CELL_H, part.height() - cy * InkPlanes.CELL_H);
            int uniform = part.uniform(p, cx, cy);
            if (uniform >= 0) {
                covered[p] += uniform > 0 ? (long) w * h : 0;
                tints[p] += (long) uniform * w * h;
                return;
            }
            byte[] dense = part.dense(p, cx, cy);
            for (int y = 0; y < h; y++) {
                int at = y * InkPlanes.CELL_W;
                for (int x = at; x < at + w; x++) {
                    int tint = dense[x] & 255;
                    covered[p] += tint > 0 ? 1 : 0;
                    tints[p] += tint;
                }
            }
        }

        /** @return use of each ink, in plane order */
        public List<InkUse> uses() {
            double cmPerPx = 2.54 / 72 / pxPerPt;
            List<InkUse> out = new ArrayList<>();
            for (int p = 0; p < covered.length; p++) {
                out.add(new InkUse(
                        inks.get(p), covered[p] * cmPerPx * cmPerPx, pixels == 0 ? 0 : tints[p] / 255.0 / pixels));
            }
            return out;
        }
    }
}

package inkground.proof;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;

/**
 * Lays pictures of one size in an even grid on a neutral grey: head line, pictures with a name and a line below each, foot line.
 * Where things lie is worked out first, so that each picture can be painted straight into its place.
 */
public final class ContactSheet {
    /** The surround: neutral, L* 46, about a fifth of the light of white, as ISO 3664 asks (from memory). */
    public static final int SURROUND = 0xff6e6e6e;
    /** Most pictures on one sheet. */
    public static final int MOST = 24;

    private static final double ASPECT = 1.414; // that of the sheet aimed at: a sheet of paper on its long side
    private static final Color STRONG = new Color(0xffffff);
    private static final Color QUIET = new Color(0xe2e2e2);

    private final int columns;
    private final int pictureWidth;
    private final int pictureHeight;
    private final int unit; // one tenth of the height of a line of text decides all distances
    private final int width;
    private final int height;

    /**
     * @param count number of pictures, 1 to {@value #MOST}
     * @param pictureWidth of each, in pixels, above 0
     * @param pictureHeight of each, in pixels, above 0
     */
    public ContactSheet(int count, int pictureWidth, int pictureHeight) {
        if (count < 1 || count > MOST || pictureWidth < 1 || pictureHeight < 1) {
            throw new IllegalArgumentException(
                    count + " pictures of " + pictureWidth + " × " + pictureHeight + " pixels");
        }
        this.pictureWidth = pictureWidth;
        this.pictureHeight = pictureHeight;
        this.unit = Math.max(1, (int) Math.round(Math.sqrt((double) pictureWidth * pictureHeight) / 190));
        this.columns = columns(count);
        int rows = rows(count, columns);
        this.width = width(columns);
        this.height = height(rows);
    }

    private static int rows(int count, int columns) {
        return (count + columns - 1) / columns;
    }

    private int width(int columns) {
        return 2 * margin() + columns * pictureWidth + (columns - 1) * gap();
    }

    private int height(int rows) {
        return head() + rows * (pictureHeight + caption()) + (rows - 1) * gap() + foot();
    }

    /** The number of columns whose sheet is nearest to the shape aimed at; empty places count against it. */
    private int columns(int count) {
        int best = 1;
        double least = Double.MAX_VALUE;
        for (int c = 1; c <= count; c++) {
            int rows = rows(count, c);
            double off = Math.abs(Math.log((double) width(c) / height(rows) / ASPECT));
            double empty = (double) (rows * c - count) / count;
            if (off + empty < least) {
                least = off + empty;
                best = c;
            }
        }
        return best;
    }

    private int margin() {
        return 14 * unit;
    }

    private int gap() {
        return 10 * unit;
    }

    private int caption() {
        return 20 * unit;
    }

    private int head() {
        return margin() + 24 * unit;
    }

    private int foot() {
        return margin() + 8 * unit;
    }

    /** @return width of the sheet in pixels */
    public int width() {
        return width;
    }

    /** @return height of the sheet in pixels */
    public int height() {
        return height;
    }

    /** @return where a picture goes, in pixels from the top left */
    public Rectangle place(int index) {
        int x = margin() + index % columns * (pictureWidth + gap());
        int y = head() + index / columns * (pictureHeight + caption() + gap());
        return new Rectangle(x, y, pictureWidth, pictureHeight);
    }

    /**
     * What is written below a picture.
     *
     * @param name shown strong
     * @param line shown below it
     */
    public record Caption(String name, String line) {}

    /** @return a sheet without pictures, with its lines of text; sRGB */
    public BufferedImage sheet(String title, String subtitle, List<Caption> captions, String footLine) {
        BufferedImage sheet = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = sheet.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(new Color(SURROUND));
        g.fillRect(0, 0, width, height);
        int room = width - 2 * margin();
        line(g, title, Font.BOLD, 10, STRONG, margin(), margin() + 8 * unit, room);
        line(g, subtitle, Font.PLAIN, 7, QUIET, margin(), margin() + 18 * unit, room);
        for (int i = 0; i < captions.size(); i++) {
            Rectangle at = place(i);
            int below = at.y + at.height;
            line(g, captions.get(i).name(), Font.BOLD, 7, STRONG, at.x, below + 9 * unit, pictureWidth);
            line(g, captions.get(i).line(), Font.PLAIN, 7, QUIET, at.x, below + 18 * unit, pictureWidth);
        }
        line(g, footLine, Font.PLAIN, 6, QUIET, margin(), height - margin() + 3 * unit, room);
        g.dispose();
        return sheet;
    }

    private void line(Graphics2D g, String text, int style, double size, Color colour, int x, int y, int room) {
        g.setColor(colour);
        g.setFont(new Font(Font.SANS_SERIF, style, 1).deriveFont((float) size * unit));
        g.drawString(fitting(text, g.getFontMetrics(), room), x, y);
    }

    /** The text, or as much of it as there is room for and an ellipsis. */
    private static String fitting(String text, FontMetrics font, int room) {
        if (font.stringWidth(text) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0 && font.stringWidth(text.substring(0, end).stripTrailing() + "…") > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "…";
    }

    /** Draws a hair-thin frame around a picture, so that one close to the surround is seen to end. */
    public void frame(BufferedImage sheet, int index) {
        Rectangle at = place(index);
        Graphics2D g = sheet.createGraphics();
        g.setColor(new Color(0x585858));
        g.setStroke(new BasicStroke(1));
        g.draw(new Rectangle2D.Double(at.x - 1, at.y - 1, at.width + 1.0, at.height + 1.0));
        g.dispose();
    }
}

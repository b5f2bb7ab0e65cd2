package inkground.app;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.font.LineBreakMeasurer;
import java.awt.font.TextAttribute;
import java.awt.font.TextLayout;
import java.awt.image.BufferedImage;
import java.text.AttributedString;
import java.util.ArrayList;
import java.util.List;

/** Lines of text under a picture, on the picture's own ground. */
final class Caption {
    private static final int LEAST_PX = 11;

    private Caption() {}

    /**
     * @param lines broken where they are too long
     * @param groundArgb behind them
     * @return a new picture
     */
    static BufferedImage under(BufferedImage picture, List<String> lines, int groundArgb) {
        int size = Math.max(LEAST_PX, picture.getWidth() / 66);
        int margin = size * 3;
        FontRenderContext context = new FontRenderContext(null, true, true);
        List<TextLayout> layouts = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Font font = new Font(Font.SANS_SERIF, i == 0 ? Font.BOLD : Font.PLAIN, size);
            AttributedString text = new AttributedString(lines.get(i));
            text.addAttribute(TextAttribute.FONT, font);
            LineBreakMeasurer breaks = new LineBreakMeasurer(text.getIterator(), context);
            while (breaks.getPosition() < lines.get(i).length()) {
                layouts.add(breaks.nextLayout(Math.max(size * 8, picture.getWidth() - 2 * margin)));
            }
        }
        double step = size * 1.45;
        int height = (int) Math.ceil(layouts.size() * step + margin);
        BufferedImage out =
                new BufferedImage(picture.getWidth(), picture.getHeight() + height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = out.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(new Color(groundArgb));
        g.fillRect(0, 0, out.getWidth(), out.getHeight());
        g.drawImage(picture, 0, 0, null);
        g.setColor(Color.WHITE);
        for (int i = 0; i < layouts.size(); i++) {
            layouts.get(i).draw(g, margin, (float) (picture.getHeight() + (i + 0.8) * step));
        }
        g.dispose();
        return out;
    }
}

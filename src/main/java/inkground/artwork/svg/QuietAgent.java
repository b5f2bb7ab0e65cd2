package inkground.artwork.svg;

import java.awt.geom.Dimension2D;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.util.ParsedURL;

/** Answers the library's questions: how large a pixel is, and that nothing outside the file is ever loaded or run. */
final class QuietAgent extends UserAgentAdapter {
    private final Dimension2D viewport;
    private final Notes notes;

    /**
     * @param widthPx what percentages refer to
     * @param heightPx as well
     */
    QuietAgent(double widthPx, double heightPx, Notes notes) {
        this.viewport = new Viewport();
        viewport.setSize(widthPx, heightPx);
        this.notes = notes;
        addStdFeatures();
    }

    @Override
    public Dimension2D getViewportSize() {
        return viewport;
    }

    /** CSS Values and Units Level 3 §6.2: 96 px are one inch. */
    @Override
    public float getPixelUnitToMillimeter() {
        return 25.4f / 96;
    }

    @Override
    public String getMedia() {
        return "print";
    }

    @Override
    public void displayError(Exception e) {
        notes.add("style that cannot be understood", "without it", null);
    }

    @Override
    public void displayError(String message) {
        notes.add("style that cannot be understood", "without it", null);
    }

    @Override
    public void displayMessage(String message) {
        // remarks for developers
    }

    @Override
    public void checkLoadScript(String type, ParsedURL script, ParsedURL document) {
        throw new SecurityException("scripts are not run");
    }

    @Override
    public void checkLoadExternalResource(ParsedURL resource, ParsedURL document) {
        if (!"data".equals(resource.getProtocol())) {
            notes.add("fonts, profiles or pictures outside the file", "without them", null);
            throw new SecurityException("nothing outside the file is loaded");
        }
    }

    /** What percentages refer to. */
    private static final class Viewport extends Dimension2D {
        private double width;
        private double height;

        @Override
        public double getWidth() {
            return width;
        }

        @Override
        public double getHeight() {
            return height;
        }

        @Override
        public void setSize(double w, double h) {
            width = w;
            height = h;
        }
    }
}

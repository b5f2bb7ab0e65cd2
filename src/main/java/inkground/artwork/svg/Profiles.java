package inkground.artwork.svg;

import java.util.HashSet;
import java.util.Set;
import org.apache.batik.bridge.Bridge;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.SVGColorProfileElementBridge;
import org.apache.xmlgraphics.java2d.color.ICCColorSpaceWithIntent;
import org.w3c.dom.Element;

/**
 * Colour profiles that the file carries: SVG 1.1 §12.3. Unlike the library's own, one that cannot be read costs a shape its exact
 * colour and not the shape: it takes the sRGB stand-in that every such colour has.
 */
final class Profiles extends SVGColorProfileElementBridge {
    private final Notes notes;
    private final Set<String> damaged = new HashSet<>();

    Profiles(Notes notes) {
        this.notes = notes;
    }

    @Override
    public Bridge getInstance() {
        return this; // one for all, so that a damaged profile is read once
    }

    /** @return the profile's space; null, and noted, where there is none to be had */
    @Override
    public ICCColorSpaceWithIntent createICCColorSpaceWithIntent(
            BridgeContext context, Element painted, String profile) {
        if (damaged.contains(profile)) {
            return null;
        }
        try {
            ICCColorSpaceWithIntent space = super.createICCColorSpaceWithIntent(context, painted, profile);
            if (space == null) {
                notes.add(
                        "a colour by the profile " + profile + ", which no color-profile element of the file carries",
                        "its sRGB stand-in",
                        painted);
            }
            return space;
        } catch (RuntimeException e) { // the library's and the platform's, of several kinds
            damaged.add(profile);
            notes.add("a colour by the profile " + profile + ", which is damaged", "its sRGB stand-in", painted);
            return null;
        }
    }
}

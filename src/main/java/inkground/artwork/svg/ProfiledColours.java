package inkground.artwork.svg;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import org.apache.batik.bridge.SVGColorProfileElementBridge;
import org.apache.batik.css.engine.value.Value;
import org.apache.batik.css.engine.value.svg.ICCColor;
import org.apache.xmlgraphics.java2d.color.ICCColorSpaceWithIntent;
import org.w3c.dom.Element;

/** Colours that a file states by one of its own colour profiles: SVG 1.1 §12.3, icc-color(). */
final class ProfiledColours {
    private ProfiledColours() {}

    /** @return the colour in its profile's space; null when the value names none that the file carries */
    static Colour of(Value list, Element element, SvgContext context) {
        for (int i = 0; i < list.getLength(); i++) {
            if (list.item(i) instanceof ICCColor stated) {
                return of(stated, element, context);
            }
        }
        return null;
    }

    private static Colour of(ICCColor stated, Element element, SvgContext context) {
        SVGColorProfileElementBridge bridge =
                (SVGColorProfileElementBridge) context.getBridge(SvgXml.SVG, "color-profile");
        ICCColorSpaceWithIntent space =
                bridge.createICCColorSpaceWithIntent(context, element, stated.getColorProfile());
        if (space == null) {
            return null;
        }
        int n = space.getNumComponents();
        if (n != stated.getNumberOfColors() || n != 1 && n != 3 && n != 4) {
            return null;
        }
        float[] components = new float[n];
        for (int i = 0; i < n; i++) {
            components[i] = stated.getColor(i);
        }
        ColourSpace device = n == 1
                ? new ColourSpace.DeviceGray()
                : n == 3 ? new ColourSpace.DeviceRgb() : new ColourSpace.DeviceCmyk();
        ColourSpace.Profile profile = new ColourSpace.Profile(space.getProfile().getData());
        return new Colour(new ColourSpace.Icc(profile, n, device), components);
    }
}

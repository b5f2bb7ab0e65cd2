package inkground.plate;

import inkground.artwork.ImageSource;
import inkground.base.Cancel;
import inkground.base.Refusal;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Decoded images as tints, kept while they fit a weight in bytes; the one used longest ago goes first. Thread-safe: an image
 * that two threads want is decoded once.
 */
final class ImageCache {
    /** A quarter of the heap: the planes of the page and the decoder need the rest. */
    private static final long MOST_BYTES = Runtime.getRuntime().maxMemory() / 4;

    /**
     * @param image tints
     * @param mask alpha, or null
     */
    record Entry(InkImage image, InkImage mask) {
        long bytes() {
            return image.bytes() + (mask == null ? 0 : mask.bytes());
        }
    }

    private record Key(ImageSource source, Class<? extends ColourMapping> mapping) {
        @Override
        public boolean equals(Object o) {
            return o instanceof Key k && source == k.source && mapping == k.mapping;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(source) * 31 + mapping.hashCode();
        }
    }

    private final Map<Key, Entry> entries = new LinkedHashMap<>(16, 0.75f, true);
    private final Map<ImageSource, Object> locks = new IdentityHashMap<>();
    private long bytes;

    Entry get(ImageSource source, ColourMapping mapping, Cancel cancel) throws Refusal {
        Key key = new Key(source, mapping.getClass());
        synchronized (lockOf(source)) {
            Entry entry = lookup(key);
            if (entry == null) {
                ImageSource.Pixels pixels = source.decode();
                cancel.check();
                InkImage mask = pixels.mask() == null ? null : InkImage.ofMask(pixels.mask());
                entry = new Entry(InkImage.of(pixels, source.space(), mapping, cancel), mask);
                keep(key, entry);
            }
            return entry;
        }
    }

    InkImage stencil(ImageSource source, Cancel cancel) throws Refusal {
        Key key = new Key(source, ColourMapping.class);
        synchronized (lockOf(source)) {
            Entry entry = lookup(key);
            if (entry == null) {
                entry = new Entry(InkImage.ofMask(source.decode()), null);
                cancel.check();
                keep(key, entry);
            }
            return entry.image;
        }
    }

    private synchronized Object lockOf(ImageSource source) {
        return locks.computeIfAbsent(source, s -> new Object());
    }

    private synchronized Entry lookup(Key key) {
        return entries.get(key);
    }

    private synchronized void keep(Key key, Entry entry) {
        entries.put(key, entry);
        bytes += entry.bytes();
        var oldest = entries.entrySet().iterator();
        while (bytes > MOST_BYTES && entries.size() > 1) {
            bytes -= oldest.next().getValue().bytes();
            oldest.remove();
        }
    }
}

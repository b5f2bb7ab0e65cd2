package inkground.viewer.surface;

import inkground.plate.PlateRequest;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/** Tiles of one page by what was asked for, the longest unused forgotten first once they weigh too much. */
public final class TileCache {
    private final long limitBytes;
    private final Map<PlateRequest, Tile> tiles = new LinkedHashMap<>(64, 0.75f, true);
    private long bytes;

    /**
     * @param limitBytes most that all tiles may weigh; the tile put last is kept even if it alone is heavier
     */
    public TileCache(long limitBytes) {
        this.limitBytes = limitBytes;
    }

    /** @return the tile, now the latest used; null when there is none */
    public Tile get(PlateRequest request) {
        return tiles.get(request);
    }

    /** Keeps a tile. */
    public void put(Tile tile) {
        Tile before = tiles.put(tile.request(), tile);
        bytes += tile.bytes() - (before == null ? 0 : before.bytes());
        Iterator<Tile> oldest = tiles.values().iterator();
        while (bytes > limitBytes && tiles.size() > 1) {
            bytes -= oldest.next().bytes();
            oldest.remove();
        }
    }

    /** Forgets all. */
    public void clear() {
        tiles.clear();
        bytes = 0;
    }

    /** @return weight of all tiles */
    public long bytes() {
        return bytes;
    }

    /** @return number of tiles */
    public int size() {
        return tiles.size();
    }
}

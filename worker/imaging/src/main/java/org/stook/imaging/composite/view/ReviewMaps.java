package org.stook.imaging.composite.view;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.score.SoftTiles;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Source map, depth map and doubtful areas at reduced size, lossless, and {@code review.json}, which says what lies in the folder.
 * A map's pixel (i, j) stands for the composite's pixel (n i + n / 2, n j + n / 2).
 */
public final class ReviewMaps {
    private static final int LONG_SIDE = 2400;
    /** Source ranks this far apart in neighbouring map pixels are a jump: at least so many frames ... */
    private static final int JUMP_FRAMES = 3;
    /** ... and at least this share of the sweep. */
    private static final double JUMP_SHARE = 0.15;

    private final Blended blended;
    private final int frames;
    private final int n;
    private final int width;
    private final int height;

    /** @param frames how many were blended */
    public ReviewMaps(Blended blended, int frames) {
        this.blended = blended;
        this.frames = frames;
        int fullWidth = blended.composite().width();
        int fullHeight = blended.composite().height();
        int reduction = 1;
        while (Math.max(fullWidth, fullHeight) / reduction > LONG_SIDE) reduction *= 2;
        this.n = reduction;
        this.width = fullWidth / n;
        this.height = fullHeight / n;
    }

    /** Which pixels of the composite. */
    public interface Pixels {
        boolean has(int x, int y);
    }

    /**
     * Writes the maps into {@code folder}: {@code source.png} (16 bit, rank of the frame), {@code depth.png} (16 bit, 256 x position
     * in the sweep, 65535 where nothing decided it) and {@code doubt.png} (8 bit, see {@link Doubt}).
     */
    public void write(Path folder, SoftTiles soft, Pixels overridden) throws IOException {
        Files.createDirectories(folder);
        short[] source = new short[width * height];
        short[] depth = new short[source.length];
        short[] sources = blended.sourceMap();
        float[] depths = blended.depthMap().samples();
        for (int i = 0; i < source.length; i++) {
            source[i] = sources[full(i)];
            depth[i] = depthCode(depths[full(i)]);
        }
        Png.writeSixteen(folder.resolve("source.png"), width, height, source);
        Png.writeSixteen(folder.resolve("depth.png"), width, height, depth);
        Png.writeEight(folder.resolve("doubt.png"), width, height, doubts(source, depth, soft, overridden));
        Files.writeString(folder.resolve("review.json"), contents());
    }

    /** Index of the full-size pixel that the map's pixel stands for. */
    private int full(int i) {
        return (i / width * n + n / 2) * blended.composite().width() + i % width * n + n / 2;
    }

    private static short depthCode(float position) {
        return Float.isNaN(position) ? (short) 65535 : (short) Math.min(65534, Math.round(position * 256));
    }

    private byte[] doubts(short[] source, short[] depth, SoftTiles soft, Pixels overridden) {
        byte[] doubts = new byte[source.length];
        for (int i = 0; i < doubts.length; i++) {
            int bits = 0;
            if (depth[i] == (short) 65535) bits |= Doubt.UNDECIDED.bit();
            else if (jumps(source, depth, i)) bits |= Doubt.JUMP.bit();
            int x = i % width * n + n / 2;
            int y = i / width * n + n / 2;
            if (soft.at(x, y)) bits |= Doubt.SOFT.bit();
            if (overridden.has(x, y)) bits |= Doubt.OVERRIDDEN.bit();
            doubts[i] = (byte) bits;
        }
        return doubts;
    }

    /** Whether a decided neighbour to the right or below came from a far frame. */
    private boolean jumps(short[] source, short[] depth, int i) {
        double far = Math.max(JUMP_FRAMES, JUMP_SHARE * frames);
        boolean right = i % width + 1 < width && depth[i + 1] != (short) 65535;
        boolean below = i + width < source.length && depth[i + width] != (short) 65535;
        return right && Math.abs(source[i] - source[i + 1]) >= far
                || below && Math.abs(source[i] - source[i + width]) >= far;
    }

    private String contents() {
        JsonMapper mapper = JsonMapper.builder().build();
        int fullWidth = blended.composite().width();
        int fullHeight = blended.composite().height();
        ObjectNode all = mapper.createObjectNode().put("schema", "stook-review-1");
        all.put("width", fullWidth).put("height", fullHeight);
        ObjectNode maps = all.putObject("maps");
        maps.put("reduction", n).put("width", width).put("height", height);
        maps.put("source", "source.png").put("depth", "depth.png").put("doubt", "doubt.png");
        int reduction = Proxies.reduction(fullWidth, fullHeight);
        ObjectNode proxies = all.putObject("proxies");
        proxies.put("reduction", reduction).put("width", fullWidth / reduction).put("height", fullHeight / reduction);
        ArrayNode files = proxies.putArray("frames");
        ArrayNode thumbnails = proxies.putArray("thumbnails");
        for (int rank = 0; rank < frames; rank++) {
            files.add(Proxies.file(rank));
            thumbnails.add(Proxies.thumbnail(rank));
        }
        return mapper.writeValueAsString(all);
    }
}

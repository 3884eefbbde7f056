package org.stook.imaging.composite.view;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.tone.ColourSpace;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes a picture as static tiles for deep zoom: 512 pixel JPEG in sRGB, named as the IIIF Image API 3.0 has it at compliance
 * level 0 (https://iiif.io/api/image/3.0/compliance/), so that any web server can serve them: {@code x,y,w,h/w,h/0/default.jpg} in
 * pixels of the whole picture, {@code full/w,h/0/default.jpg} for the size that fits into one tile, and {@code info.json}.
 *
 * <p>Rows go through once; beside the picture only a band of 512 rows of each size is held.
 */
public final class TilePyramid {
    /** Rows turned into codes in one go. */
    private static final int BAND = 128;

    private TilePyramid() {}

    /**
     * @param space what the picture's values are encoded in
     * @param folder is made; its name stands for the address in info.json, where whoever serves it puts the real one
     * @param threads how many may be used, at least 1; the bytes do not depend on it
     */
    public static void write(Frame picture, ColourSpace space, Path folder, int threads) throws IOException {
        Screen screen = new Screen(space, threads);
        TilePlan plan = new TilePlan(folder, picture.width(), picture.height(), screen.channels(), threads);
        Files.createDirectories(folder);
        TileLevel whole = new TileLevel(plan, 1);
        try {
            for (int y = 0; y < picture.height(); y += BAND) {
                int rows = Math.min(BAND, picture.height() - y);
                whole.add(screen.codes(rows(picture, y, rows)), rows);
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        Files.writeString(folder.resolve("info.json"), info(plan));
    }

    private static Frame rows(Frame picture, int from, int rows) {
        int width = picture.width();
        Frame part = Frame.blank(width, rows, picture.channels());
        for (int c = 0; c < picture.channels(); c++) {
            Plane plane = picture.plane(c);
            System.arraycopy(plane.samples(), from * width, part.plane(c).samples(), 0, rows * width);
        }
        return part;
    }

    private static String info(TilePlan plan) {
        JsonMapper mapper = JsonMapper.builder().build();
        ObjectNode info = mapper.createObjectNode();
        info.put("@context", "http://iiif.io/api/image/3/context.json");
        info.put("id", String.valueOf(plan.folder().getFileName()));
        info.put("type", "ImageService3")
                .put("protocol", "http://iiif.io/api/image")
                .put("profile", "level0");
        info.put("width", plan.width()).put("height", plan.height());
        int largest = plan.largestScale();
        info.putArray("sizes")
                .addObject()
                .put("width", plan.reduced(plan.width(), largest))
                .put("height", plan.reduced(plan.height(), largest));
        ObjectNode tiles = info.putArray("tiles").addObject();
        tiles.put("width", TilePlan.TILE).put("height", TilePlan.TILE);
        ArrayNode scales = tiles.putArray("scaleFactors");
        for (int scale = 1; scale <= largest; scale *= 2) scales.add(scale);
        return mapper.writeValueAsString(info);
    }
}

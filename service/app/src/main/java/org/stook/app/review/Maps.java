package org.stook.app.review;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;

/** The reduced maps of a published run, decoded: source, depth and doubt, each one number a place. */
final class Maps {
    static final int UNDECIDED = 65535;

    private final int width;
    private final int height;
    private final int[][] codes = new int[Layers.Kind.values().length][];

    private Maps(int width, int height) {
        this.width = width;
        this.height = height;
    }

    /** @param folder where a run's maps lie. @return empty if one of them is not there */
    static Optional<Maps> read(Path folder) throws IOException {
        Maps maps = null;
        for (Layers.Kind kind : Layers.Kind.values()) {
            Path file = folder.resolve(kind.word() + ".png");
            BufferedImage image = Files.isRegularFile(file) ? ImageIO.read(file.toFile()) : null;
            if (image == null) {
                return Optional.empty();
            }
            if (maps == null) maps = new Maps(image.getWidth(), image.getHeight());
            maps.codes[kind.ordinal()] = image.getRaster().getSamples(0, 0, maps.width, maps.height, 0, (int[]) null);
        }
        return Optional.ofNullable(maps);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** The live array, row by row. */
    int[] codes(Layers.Kind kind) {
        return codes[kind.ordinal()];
    }
}

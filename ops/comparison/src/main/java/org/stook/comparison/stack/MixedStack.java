package org.stook.comparison.stack;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.stook.imaging.codec.JpegWriter;
import org.stook.imaging.frame.Samples;

/**
 * A longer sweep out of a rendered one: frames between two rendered ones are mixed of both. No lens takes such pictures, but each
 * is another one and made in a second: enough to tell what time and memory a long sweep takes.
 *
 * @param frames how many, more than were rendered
 */
public record MixedStack(SceneStack rendered, int frames) {
    private static final double QUALITY = 0.92;
    private static final int CHANNELS = 3;

    /** The folder with the frames; they are made if they are not there yet. */
    public Path frames(Path cache) throws IOException {
        Path from = rendered.frames(cache);
        Path folder = cache.resolve(from.getFileName() + "-mixed-" + frames);
        Path done = folder.resolve(".complete");
        if (Files.exists(done)) return folder;
        Files.createDirectories(folder);
        List<Path> files = FrameFiles.in(from);
        for (int i = 0; i < frames; i++) {
            double place = i * (files.size() - 1.0) / (frames - 1);
            int first = Math.min(files.size() - 2, (int) place);
            write(files.get(first), files.get(first + 1), place - first, folder.resolve("M_%04d.jpg".formatted(i)));
        }
        Files.createFile(done);
        return folder;
    }

    private static void write(Path first, Path second, double share, Path file) throws IOException {
        Samples a = FrameFiles.read(first);
        Samples b = FrameFiles.read(second);
        int length = a.width() * CHANNELS;
        byte[] codes = new byte[a.height() * length];
        int[] rowA = new int[length];
        int[] rowB = new int[length];
        for (int y = 0; y < a.height(); y++) {
            a.row(y, rowA);
            b.row(y, rowB);
            for (int i = 0; i < length; i++) {
                codes[y * length + i] = (byte) Math.round((1 - share) * rowA[i] + share * rowB[i]);
            }
        }
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            JpegWriter.write(codes, a.width(), a.height(), CHANNELS, QUALITY, out);
        }
    }
}

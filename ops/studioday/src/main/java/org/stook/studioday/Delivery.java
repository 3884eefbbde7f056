package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;

/** Writes one station's files as they come, each in its own way. */
final class Delivery implements Callable<Integer> {
    private static final int PARTS = 4;
    private final Path folder;
    private final List<Piece> pieces;
    private final long pauseMillis;

    /** @param pauseMillis between two files */
    Delivery(Path folder, List<Piece> pieces, long pauseMillis) {
        this.folder = folder;
        this.pieces = List.copyOf(pieces);
        this.pauseMillis = pauseMillis;
    }

    /** @return how many files were written */
    @Override
    public Integer call() throws IOException, InterruptedException {
        int written = 0;
        for (Piece piece : pieces) {
            for (Drop drop : piece.drops()) {
                write(drop);
                written++;
                Thread.sleep(pauseMillis);
            }
        }
        return written;
    }

    private void write(Drop drop) throws IOException, InterruptedException {
        Path file = folder.resolve(drop.path());
        Files.createDirectories(file.getParent());
        byte[] bytes = drop.content().get();
        switch (drop.how()) {
            case AT_ONCE -> Files.write(file, bytes);
            case GROWING -> {
                for (int i = 0; i < PARTS; i++) {
                    byte[] part = Arrays.copyOfRange(bytes, (int) ((long) bytes.length * i / PARTS), (int)
                            ((long) bytes.length * (i + 1) / PARTS));
                    Files.write(file, part, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
                    Thread.sleep(pauseMillis);
                }
            }
            case RENAMED -> {
                Path unfinished = file.resolveSibling(file.getFileName() + ".part");
                Files.write(unfinished, bytes);
                Files.move(unfinished, file);
            }
            case REWRITTEN -> {
                Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
                Thread.sleep(pauseMillis);
                Files.write(file, bytes);
            }
        }
    }
}

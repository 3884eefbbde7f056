package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Rig;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;

/** Writes one stack's frames into its folder, hardly any of them as it should. Writes to the share whether it is mounted or not. */
final class BadWriter implements Callable<Void> {
    private static final int STALL_MILLIS = 30_000;
    private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

    private final Path folder;
    private final String subject;
    private final List<Picture> sweep;
    private final SplittableRandom random;
    private final WriterLog log;

    BadWriter(Path share, String subject, List<Picture> sweep, SplittableRandom random, WriterLog log) {
        this.folder = share.resolve(subject);
        this.subject = subject;
        this.sweep = List.copyOf(sweep);
        this.random = random;
        this.log = log;
    }

    @Override
    public Void call() throws IOException, InterruptedException {
        Files.createDirectories(folder);
        Camera camera = Camera.USUAL.withSerial(subject);
        OffsetDateTime time = NINE.plusSeconds(random.nextInt(20_000));
        for (int i = 0; i < sweep.size(); i++) {
            Capture capture = new Capture(camera, Rig.USUAL.lens(), time.plusSeconds(i));
            write(subject + "_" + (i + 1) + ".jpg", FrameWriter.bytes(sweep.get(i), FrameFormat.JPEG_420, capture));
            Thread.sleep(random.nextInt(20, 400));
        }
        return null;
    }

    private void write(String name, byte[] bytes) throws IOException, InterruptedException {
        Path file = folder.resolve(name);
        byte[] half = Arrays.copyOf(bytes, bytes.length / 2);
        byte[] rest = Arrays.copyOfRange(bytes, bytes.length / 2, bytes.length);
        switch (random.nextInt(12)) {
            case 0 -> {
                boolean long30 = random.nextInt(8) == 0;
                Files.write(file, half);
                Thread.sleep(long30 ? STALL_MILLIS : random.nextInt(500, 7000));
                log.wrote(path(name), bytes);
                Files.write(file, rest, StandardOpenOption.APPEND);
            }
            case 1 -> {
                // Whole, cut back, whole again.
                log.wrote(path(name), bytes);
                Files.write(file, bytes);
                Thread.sleep(random.nextInt(100, 3000));
                Files.write(file, half);
                Thread.sleep(random.nextInt(100, 3000));
                Files.write(file, bytes);
            }
            case 2 -> {
                // Another frame first, overwritten in place.
                byte[] other = bytes.clone();
                other[other.length - 40] ^= 1;
                log.wrote(path(name), other);
                Files.write(file, other);
                Thread.sleep(random.nextInt(100, 4000));
                log.wrote(path(name), bytes);
                Files.write(file, bytes);
            }
            case 3, 4 -> {
                Path unfinished = folder.resolve(name + ".part");
                Files.write(unfinished, half);
                Thread.sleep(random.nextInt(100, 2000));
                Files.write(unfinished, rest, StandardOpenOption.APPEND);
                log.wrote(path(name), bytes);
                Files.move(unfinished, file);
            }
            default -> {
                log.wrote(path(name), bytes);
                Files.write(file, bytes);
            }
        }
    }

    private String path(String name) {
        return subject + "/" + name;
    }
}

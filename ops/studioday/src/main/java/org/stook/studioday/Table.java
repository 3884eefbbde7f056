package org.stook.studioday;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.optics.Lens;

/** One body at one station: shoots pieces one after the other by a clock of its own and names the files as cameras do. */
final class Table {
    private final Camera camera;
    private final Lens lens;
    private final String prefix;
    private OffsetDateTime clock;
    private int count;

    Table(Camera camera, Lens lens, String prefix, OffsetDateTime start) {
        this.camera = camera;
        this.lens = lens;
        this.prefix = prefix;
        this.clock = start;
    }

    void pause(double seconds) {
        clock = clock.plus(Duration.ofMillis((long) (1000 * seconds)));
    }

    /** The next capture. */
    Drop shoot(Picture picture, Truth truth, Drop.How how) {
        Capture capture = new Capture(camera, lens, clock);
        pause(0.85);
        return new Drop(name("jpg"), truth, () -> FrameWriter.bytes(picture, FrameFormat.JPEG_420, capture), how);
    }

    /** A raw file of the capture just made: a TIFF whose one picture is of a colour filter array (TIFF/EP). */
    Drop rawOf(Drop picture, int stack) {
        String path = picture.path().replace(".jpg", ".raw");
        return new Drop(path, new Truth(Truth.Kind.RAW, stack), () -> filterArray(path), Drop.How.AT_ONCE);
    }

    /** The same bytes under another name, as when a transfer is repeated. */
    Drop copyOf(Drop picture, int stack) {
        return new Drop(
                picture.path().replace(".jpg", "_copy.jpg"),
                new Truth(Truth.Kind.STRAY, stack),
                picture.content(),
                Drop.How.AT_ONCE);
    }

    Drop cutShort(Drop picture, int stack) {
        Supplier<byte[]> half = () -> {
            byte[] whole = picture.content().get();
            return java.util.Arrays.copyOf(whole, whole.length * 3 / 5);
        };
        return new Drop(name("jpg"), new Truth(Truth.Kind.BROKEN, stack), half, Drop.How.AT_ONCE);
    }

    Drop text(int stack) {
        return new Drop(
                name("jpg"),
                new Truth(Truth.Kind.BROKEN, stack),
                () -> "Harrow Cabinet, list of loans\n".repeat(30).getBytes(StandardCharsets.US_ASCII),
                Drop.How.AT_ONCE);
    }

    private String name(String extension) {
        return String.format(Locale.ROOT, "%s_%05d.%s", prefix, ++count, extension);
    }

    private static byte[] filterArray(String name) {
        List<Integer> bytes = new ArrayList<>();
        byte[] head = {'I', 'I', 42, 0, 8, 0, 0, 0, 1, 0, 6, 1, 3, 0, 1, 0, 0, 0, 0x23, (byte) 0x80, 0, 0, 0, 0, 0, 0};
        for (byte b : head) bytes.add((int) b);
        SplittableRandom random = new SplittableRandom(name.hashCode());
        for (int i = 0; i < 4000; i++) bytes.add(random.nextInt(256));
        byte[] all = new byte[bytes.size()];
        for (int i = 0; i < all.length; i++) all[i] = (byte) (int) bytes.get(i);
        return all;
    }
}

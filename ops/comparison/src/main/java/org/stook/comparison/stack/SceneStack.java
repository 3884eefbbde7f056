package org.stook.comparison.stack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.zip.CRC32;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;

/**
 * A generated bracket as files.
 *
 * @param name of the case, also of its folder
 * @param bracket the scene
 * @param format of the files
 */
public record SceneStack(String name, Bracket bracket, FrameFormat format) {
    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

    /**
     * The folder with the frames; they are rendered if they are not there yet. The folder's name changes with the plan and
     * with the generator, so that old frames are never taken for new ones.
     */
    public Path frames(Path cache) throws IOException {
        Path folder = cache.resolve("%s-%08x".formatted(name, key()));
        Path done = folder.resolve("complete");
        if (Files.exists(done)) return folder;
        System.err.printf("rendering %d frames of %s%n", bracket.plan().frames(), name);
        writer().writeFrames(folder);
        Files.writeString(done, bracket.plan().toString());
        return folder;
    }

    public String fileName(int frame) {
        return writer().fileName(frame);
    }

    /** Rank of the frame in the file of this name. */
    public int rank(String fileName) {
        for (int i = 0; i < bracket.plan().frames(); i++) if (fileName(i).equals(fileName)) return i;
        throw new IllegalArgumentException("%s is no frame of %s".formatted(fileName, name));
    }

    private BracketWriter writer() {
        return new BracketWriter(bracket, format, Camera.USUAL, TAKEN);
    }

    private long key() throws IOException {
        CRC32 crc = new CRC32();
        crc.update(
                (bracket.subject().name() + bracket.plan() + format).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        Path generator = Path.of(Bracket.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .getPath());
        if (Files.isRegularFile(generator)) crc.update(Files.readAllBytes(generator));
        return crc.getValue();
    }

    /** The samples of a picture, shared. */
    public static Frame frame(Picture picture) {
        return new Frame(java.util.Arrays.stream(picture.planes())
                .map(samples -> new Plane(picture.width(), picture.height(), samples))
                .toList());
    }
}

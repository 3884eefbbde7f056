package org.stook.imaging.codec;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.stook.imaging.frame.Samples;

/** All frame formats we read. */
public final class FrameReaders {
    private static final List<FrameReader> ALL = List.of(new JpegReader(), new RawReader(), new TiffReader());

    private FrameReaders() {}

    /** In the order in which they are asked. */
    public static List<FrameReader> all() {
        return ALL;
    }

    /** The reader for this file, by its first bytes. */
    public static FrameReader recognise(Path file) throws UnreadableFrame, IOException {
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(FrameReader.START);
        }
        for (FrameReader reader : ALL) {
            if (reader.recognises(file, start)) return reader;
        }
        String known = String.join(" or ", ALL.stream().map(FrameReader::format).toList());
        throw UnreadableFrame.of(UnreadableFrame.Reason.NOT_A_FRAME, file, FirstBytes.describe(start), known);
    }

    /** {@link FrameReader#header} of whatever format the file is. */
    public static FrameHeader header(Path file) throws UnreadableFrame, IOException {
        return recognise(file).header(file);
    }

    /** {@link FrameReader#read} of whatever format the file is. */
    public static Samples read(Path file) throws UnreadableFrame, IOException {
        return recognise(file).read(file);
    }

    /** {@link FrameReader#read(Path, SampleArrays)} of whatever format the file is. */
    public static Samples read(Path file, SampleArrays arrays) throws UnreadableFrame, IOException {
        return recognise(file).read(file, arrays);
    }
}

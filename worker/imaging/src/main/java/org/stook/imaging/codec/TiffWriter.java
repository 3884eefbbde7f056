package org.stook.imaging.codec;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.OneAhead;
import org.stook.imaging.frame.Plane;

/**
 * Writes baseline TIFF 6.0: little endian, uncompressed strips, grey or RGB of 8 or 16 bit. The directory comes first
 * and the strips follow in order, so the file goes out in one pass, a strip at a time; no second copy of the picture is
 * made, and the bytes depend on frame, area and tags only.
 *
 * <p>An encoded value v becomes code floor(max v + 1/2), clipped to 0 and max: rounded half up. A code read, divided by
 * max and written again is the same code.
 *
 * <p>Our own because the runtime's writer wants the whole picture as integers, leaves the layout of the file to the
 * release at hand and knows no sub-directory for Exif.
 */
public final class TiffWriter {
    private static final int STRIP_BYTES = 1 << 20;

    private TiffWriter() {}

    /** Writes the whole frame. */
    public static void write(Frame frame, TiffTags tags, OutputStream out) throws IOException {
        write(frame, Area.whole(frame.width(), frame.height()), tags, out);
    }

    /**
     * Writes the part of {@code frame} inside {@code area}. The stream is neither closed nor flushed.
     *
     * @throws IllegalArgumentException if the area reaches beyond the frame or the file would need more than 4 GiB, which
     *     a classic TIFF cannot address
     */
    public static void write(Frame frame, Area area, TiffTags tags, OutputStream out) throws IOException {
        if (!Area.whole(frame.width(), frame.height()).contains(area)) {
            throw new IllegalArgumentException(
                    "%s reaches beyond a frame of %d x %d".formatted(area, frame.width(), frame.height()));
        }
        int rowBytes = Math.multiplyExact(area.width(), frame.channels() * tags.bitsPerSample() / 8);
        int rowsPerStrip = Math.max(1, Math.min(area.height(), STRIP_BYTES / rowBytes));
        out.write(TiffHead.of(area, frame.channels(), rowsPerStrip, tags));
        ByteBuffer[] buffers = {buffer(rowBytes * rowsPerStrip), buffer(rowBytes * rowsPerStrip)};
        OneAhead.Maker<ByteBuffer> fill = i -> {
            // While a strip is written, and most often hashed on its way, the next one fills the other buffer.
            ByteBuffer strip = buffers[i % 2].clear();
            int end = Math.min(area.height(), (i + 1) * rowsPerStrip);
            for (int y = i * rowsPerStrip; y < end; y++) putRow(frame, area, area.y() + y, tags.bitsPerSample(), strip);
            return strip;
        };
        int count = (area.height() + rowsPerStrip - 1) / rowsPerStrip;
        try (OneAhead<ByteBuffer> strips = new OneAhead<>(count, 2, fill)) {
            for (int i = 0; i < count; i++) {
                ByteBuffer strip = strips.next();
                out.write(strip.array(), 0, strip.position());
            }
        }
    }

    private static ByteBuffer buffer(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static void putRow(Frame frame, Area area, int y, int bits, ByteBuffer strip) {
        int channels = frame.channels();
        int start = strip.position();
        int sampleBytes = bits / 8;
        for (int c = 0; c < channels; c++) {
            Plane plane = frame.plane(c);
            float[] samples = plane.samples();
            int from = y * plane.width() + area.x();
            int to = start + c * sampleBytes;
            for (int x = 0; x < area.width(); x++, to += channels * sampleBytes) {
                if (bits == 16) {
                    strip.putShort(to, (short) code(samples[from + x], 65535));
                } else {
                    strip.put(to, (byte) code(samples[from + x], 255));
                }
            }
        }
        strip.position(start + area.width() * channels * sampleBytes);
    }

    /** Rounded half up and clipped; not-a-number is black. */
    static int code(float value, int max) {
        int rounded = (int) (value * (double) max + 0.5);
        return Math.max(0, Math.min(max, rounded));
    }
}

package org.stook.imaging.codec;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.stook.imaging.codec.TiffSegments.Segment;
import org.stook.imaging.frame.Samples;

/** Puts the strips or tiles of a TIFF into one sample array. One use. */
@SuppressWarnings("ByteBufferBackingArray") // all buffers here come from ByteBuffer.allocate
final class TiffDecoding {
    private final TiffDirectory directory;
    private final TiffLayout layout;
    private final int channels;

    TiffDecoding(TiffDirectory directory, TiffLayout layout) {
        this.directory = directory;
        this.layout = layout;
        this.channels = layout.channels();
    }

    Samples decode() throws UnreadableFrame, IOException {
        List<Segment> segments = new TiffSegments(directory, layout).all();
        int size = layout.width * layout.height * channels;
        if (layout.bitsPerSample == 8) {
            byte[] codes = new byte[size];
            for (Segment segment : segments) place(segment, unpacked(segment), codes);
            return new Samples.Eight(layout.width, layout.height, channels, codes);
        }
        short[] codes = new short[size];
        for (Segment segment : segments) place(segment, unpacked(segment), codes);
        return new Samples.Sixteen(layout.width, layout.height, channels, codes);
    }

    private ByteBuffer unpacked(Segment segment) throws UnreadableFrame, IOException {
        ByteBuffer packed = directory.bytes(segment.offset(), segment.packed());
        ByteBuffer out = packed;
        if (layout.compression != TiffCompression.NONE) {
            int samples = segment.columns() * segment.rows() * layout.samplesPerPixelInSegment();
            out = ByteBuffer.allocate(samples * layout.bytesPerSample()).order(directory.order());
            try {
                layout.compression.unpack(packed.array(), out.array());
            } catch (TiffCompression.Damage damage) {
                throw directory.damaged(String.valueOf(damage.getMessage()), "whole strips or tiles");
            }
        }
        if (layout.predicted) undoPredictor(segment, out);
        return out;
    }

    /** TIFF 6.0 section 14: each sample is the difference to the one before in its row and channel. */
    private void undoPredictor(Segment segment, ByteBuffer out) {
        int step = layout.samplesPerPixelInSegment();
        int row = segment.columns() * step;
        for (int y = 0; y < segment.rows(); y++) {
            int start = y * row;
            for (int i = start + step; i < start + row; i++) {
                if (layout.bitsPerSample == 8) {
                    out.put(i, (byte) (out.get(i) + out.get(i - step)));
                } else {
                    out.putShort(2 * i, (short) (out.getShort(2 * i) + out.getShort(2 * (i - step))));
                }
            }
        }
    }

    private void place(Segment s, ByteBuffer from, byte[] codes) {
        int step = layout.samplesPerPixelInSegment();
        byte flip = (byte) (layout.whiteIsZero ? 0xFF : 0);
        byte[] source = from.array();
        int columns = Math.min(s.columns(), layout.width - s.x());
        int rows = Math.min(s.rows(), layout.height - s.y());
        for (int y = 0; y < rows; y++) {
            int in = y * s.columns() * step;
            int out = ((s.y() + y) * layout.width + s.x()) * channels + s.plane();
            for (int x = 0; x < columns; x++, in += step, out += channels) {
                for (int c = 0; c < kept(); c++) codes[out + c] = (byte) (source[in + c] ^ flip);
            }
        }
    }

    private void place(Segment s, ByteBuffer from, short[] codes) {
        int step = layout.samplesPerPixelInSegment();
        short flip = (short) (layout.whiteIsZero ? 0xFFFF : 0);
        byte[] source = from.array();
        int high = directory.order() == ByteOrder.BIG_ENDIAN ? 0 : 1;
        int columns = Math.min(s.columns(), layout.width - s.x());
        int rows = Math.min(s.rows(), layout.height - s.y());
        for (int y = 0; y < rows; y++) {
            int in = 2 * y * s.columns() * step;
            int out = ((s.y() + y) * layout.width + s.x()) * channels + s.plane();
            for (int x = 0; x < columns; x++, in += 2 * step, out += channels) {
                for (int c = 0; c < kept(); c++) {
                    int at = in + 2 * c;
                    int code = ((source[at + high] & 0xFF) << 8) | (source[at + 1 - high] & 0xFF);
                    codes[out + c] = (short) (code ^ flip);
                }
            }
        }
    }

    private int kept() {
        return layout.planar ? 1 : channels;
    }
}

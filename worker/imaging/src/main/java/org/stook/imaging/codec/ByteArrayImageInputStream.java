package org.stook.imaging.codec;

import javax.imageio.stream.ImageInputStreamImpl;
import org.stook.imaging.frame.LargeArrays;

/** Image input over bytes already in memory; the runtime's own stream would copy them once more. */
final class ByteArrayImageInputStream extends ImageInputStreamImpl {
    private final byte[] data;

    ByteArrayImageInputStream(byte[] data) {
        this.data = data;
    }

    @Override
    public int read() {
        bitOffset = 0;
        return streamPos < data.length ? data[(int) streamPos++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        // The decoder asks for input with nothing pinned.
        LargeArrays.rest();
        bitOffset = 0;
        if (streamPos >= data.length) return -1;
        int n = (int) Math.min(length, data.length - streamPos);
        System.arraycopy(data, (int) streamPos, into, offset, n);
        streamPos += n;
        return n;
    }

    @Override
    public long length() {
        return data.length;
    }
}

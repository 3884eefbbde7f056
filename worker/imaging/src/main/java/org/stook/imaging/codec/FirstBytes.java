package org.stook.imaging.codec;

import java.util.HexFormat;

/** Says in words what a file starts with, so that a refusal helps. */
final class FirstBytes {
    private FirstBytes() {}

    static String describe(byte[] start) {
        if (start.length == 0) return "an empty file";
        int shown = Math.min(start.length, 8);
        boolean text = true;
        for (int i = 0; i < Math.min(start.length, 256); i++) {
            int b = start[i];
            text &= b >= ' ' || b == '\n' || b == '\r' || b == '\t' || b < 0;
        }
        String hex = HexFormat.ofDelimiter(" ").formatHex(start, 0, shown);
        return text ? "a text file" : "a file that starts with the bytes " + hex;
    }
}

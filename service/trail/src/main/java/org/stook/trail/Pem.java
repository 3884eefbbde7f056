package org.stook.trail;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Base64;

/** The text form of keys (RFC 7468). */
final class Pem {
    static final String PRIVATE = "PRIVATE KEY";
    static final String PUBLIC = "PUBLIC KEY";
    private static final int LINE = 64;

    private Pem() {}

    static byte[] block(String text, String label, Path file) throws IOException {
        String begin = "-----BEGIN " + label + "-----";
        int from = text.indexOf(begin);
        int to = text.indexOf("-----END " + label + "-----");
        if (from < 0 || to < from) {
            throw new IOException(file + ": found no PEM block " + label);
        }
        return Base64.getMimeDecoder().decode(text.substring(from + begin.length(), to));
    }

    static String write(String label, byte[] bytes) {
        String body = Base64.getMimeEncoder(LINE, new byte[] {'\n'}).encodeToString(bytes);
        return "-----BEGIN " + label + "-----\n" + body + "\n-----END " + label + "-----\n";
    }
}

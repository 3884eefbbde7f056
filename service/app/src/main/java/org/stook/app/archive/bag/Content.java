package org.stook.app.archive.bag;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/** The bytes of one file in a bag, whose number and hash are known before any of them is read. */
sealed interface Content {
    long length();

    /** 128 hex digits. */
    String sha512();

    /** From a byte on. */
    InputStream from(long offset) throws IOException;

    /** A file where it lies. */
    record Stored(Path file, long length, String sha512) implements Content {
        @Override
        public InputStream from(long offset) throws IOException {
            long size = Files.size(file);
            if (size != length) {
                throw new IOException("%s has %d bytes, expected %d".formatted(file, size, length));
            }
            FileChannel channel = FileChannel.open(file);
            return Channels.newInputStream(channel.position(offset));
        }
    }

    /** Made anew whenever it is asked for, so that a bag of many publications need not hold it. */
    record Made(Maker maker, long length, String sha512) implements Content {
        interface Maker {
            byte[] bytes();
        }

        static Made of(Maker maker) {
            byte[] bytes = maker.bytes();
            return new Made(maker, bytes.length, Digests.sha512(bytes));
        }

        @Override
        public InputStream from(long offset) throws IOException {
            byte[] bytes = maker.bytes();
            if (bytes.length != length || !Digests.sha512(bytes).equals(sha512)) {
                throw new IOException("what was laid out is not what is made now: ask for the bag again");
            }
            return new ByteArrayInputStream(bytes, (int) offset, bytes.length - (int) offset);
        }
    }
}

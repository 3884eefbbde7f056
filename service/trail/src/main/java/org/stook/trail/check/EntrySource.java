package org.stook.trail.check;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;

/** Entries, numbers rising. */
public interface EntrySource extends AutoCloseable {
    /** The next entry, or null at the end. */
    @Nullable
    Entry next() throws IOException;

    @Override
    void close() throws IOException;

    /** Those of an export: one entry a line, JSON. */
    static EntrySource of(Path export) throws IOException {
        BufferedReader lines = Files.newBufferedReader(export);
        return new EntrySource() {
            private long line;

            @Override
            public @Nullable Entry next() throws IOException {
                String text = lines.readLine();
                line++;
                try {
                    return text == null || text.isBlank() ? null : Entry.parse(text);
                } catch (IllegalArgumentException e) {
                    throw new IOException(export + ", line " + line + ": " + e.getMessage(), e);
                }
            }

            @Override
            public void close() throws IOException {
                lines.close();
            }
        };
    }
}

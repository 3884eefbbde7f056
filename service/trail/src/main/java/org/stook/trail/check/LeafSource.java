package org.stook.trail.check;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stook.trail.SealedLeaf;
import org.stook.trail.file.HeadFolder;

/** Leaves in the order of the tree. */
public interface LeafSource extends AutoCloseable {
    /** The next leaf, or null at the end. */
    @Nullable
    SealedLeaf next() throws IOException;

    @Override
    void close() throws IOException;

    /** Those of a file {@value HeadFolder#LEAVES}. */
    static LeafSource of(Path file) throws IOException {
        HeadFolder.Leaves leaves = HeadFolder.readLeaves(file);
        return new LeafSource() {
            @Override
            public @Nullable SealedLeaf next() throws IOException {
                return leaves.next();
            }

            @Override
            public void close() throws IOException {
                leaves.close();
            }
        };
    }
}

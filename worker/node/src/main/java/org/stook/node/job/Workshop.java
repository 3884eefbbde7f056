package org.stook.node.job;

import java.nio.file.Path;
import org.stook.node.publish.Publisher;
import org.stook.node.publish.Shares;

/**
 * What a process has to work with.
 *
 * @param shares as mounted here
 * @param publisher to those shares
 * @param scratch this process's own local folder
 * @param means for computing
 */
public record Workshop(Shares shares, Publisher publisher, Path scratch, Means means) {
    /**
     * @param threads 1 or more
     * @param memory greatest heap, bytes
     */
    public record Means(int threads, long memory) {}
}

package org.stook.app.archive.bag;

import java.util.Optional;

/** A small file that goes into the payload of every bag, such as a proof. It is asked for once and kept with the package. */
public interface BagAddition {
    /** In the folder of its publication; letters, digits, dots, dashes and underscores only. */
    String name();

    /** Its bytes for one publication; empty if there is nothing to say about it. */
    Optional<byte[]> of(long run, long stack);
}

package org.stook.studioday;

import java.util.function.Supplier;

/**
 * A file as it falls into a station's folder.
 *
 * @param path relative to the station's folder
 * @param content its bytes, made when it is written
 * @param how it is written
 */
record Drop(String path, Truth truth, Supplier<byte[]> content, How how) {
    enum How {
        AT_ONCE,
        /** Piece by piece. */
        GROWING,
        /** Under an unfinished name first. */
        RENAMED,
        /** Wrong bytes first, then overwritten. */
        REWRITTEN
    }
}

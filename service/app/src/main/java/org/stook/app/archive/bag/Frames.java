package org.stook.app.archive.bag;

import java.util.Locale;

/** What becomes of the original frames in a bag. */
public enum Frames {
    /** Named with their hashes; they stay where they are. */
    NAMED,
    /** In the bag. */
    INCLUDED,
    /** Listed in fetch.txt with the address of this service: whoever has the bag completes it. */
    FETCH;

    /** @throws IllegalArgumentException if there is no such word */
    public static Frames of(String word) {
        for (Frames frames : values()) {
            if (frames.name().equals(word.toUpperCase(Locale.ROOT))) return frames;
        }
        throw new IllegalArgumentException("frames: found '" + word + "', expected named, included or fetch");
    }
}

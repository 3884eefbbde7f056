package org.stook.imaging.registration;

import java.util.List;

/** What was found between two frames of a sweep, {@code first < second}. */
record Pair(int first, int second, List<Match> matches) {
    Pair {
        matches = List.copyOf(matches);
    }
}

package org.stook.trail.check;

import java.util.ArrayList;
import java.util.List;

/** Numbers as they come, kept as ranges: a million missing entries in a row take one line. */
final class Numbers {
    private static final int MOST_RANGES = 10_000;

    private record Range(long first, long last) {
        @Override
        public String toString() {
            return first == last ? Long.toString(first) : first + " to " + last;
        }
    }

    private final List<Range> ranges = new ArrayList<>();
    private long count;

    void add(long number) {
        count++;
        int last = ranges.size() - 1;
        if (last >= 0 && ranges.get(last).last() == number - 1) {
            ranges.set(last, new Range(ranges.get(last).first(), number));
        } else if (ranges.size() < MOST_RANGES) {
            ranges.add(new Range(number, number));
        }
    }

    boolean isEmpty() {
        return count == 0;
    }

    /** Such as {@code entry 7} or {@code entries 7, 9 to 12 (5)}. */
    String named() {
        if (count == 1) {
            return "entry " + ranges.get(0);
        }
        List<String> written = new ArrayList<>();
        ranges.forEach(range -> written.add(range.toString()));
        return "entries " + String.join(", ", written) + (ranges.size() == MOST_RANGES ? ", ..." : "") + " (" + count
                + ")";
    }
}

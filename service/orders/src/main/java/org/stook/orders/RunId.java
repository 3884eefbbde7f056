package org.stook.orders;

/** Number of a run, as people and the queue name it. */
public record RunId(long value) {

    /** Reads the queue's form of it. */
    public static RunId of(String text) {
        return new RunId(Long.parseLong(text));
    }

    @Override
    public String toString() {
        return Long.toString(value);
    }
}

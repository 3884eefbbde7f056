package org.stook.app.intake;

/** What the database knows of a file. */
record FileRow(long id, String path, Sighting seen, String state, boolean missing) {
    /** Not decided yet. */
    boolean isOpen() {
        return state.equals("SEEN") || state.equals("STABLE");
    }
}

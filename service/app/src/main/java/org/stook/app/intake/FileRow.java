package org.stook.app.intake;

/** What the database knows of a file. */
record FileRow(long id, String path, Sighting seen, Standing standing) {
    /** @param code of the reason why it was set aside, empty if it was not */
    record Standing(String state, String code, boolean missing) {}

    /** Not decided yet. */
    boolean isOpen() {
        return isState("SEEN") || isState("STABLE");
    }

    boolean isState(String state) {
        return standing.state().equals(state);
    }

    boolean isMissing() {
        return standing.missing();
    }

    /** The file's name up to its last dot, in small letters: files of one capture share it. */
    String stem() {
        return stem(path);
    }

    static String stem(String path) {
        int dot = path.lastIndexOf('.');
        String stem = dot > path.lastIndexOf('/') + 1 ? path.substring(0, dot) : path;
        return stem.toLowerCase(java.util.Locale.ROOT);
    }
}

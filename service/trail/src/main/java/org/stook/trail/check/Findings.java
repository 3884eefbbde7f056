package org.stook.trail.check;

import java.util.ArrayList;
import java.util.List;

/** What a check found: what is proven, what is bad, and what cannot be told. */
public final class Findings {
    private final List<String> proven = new ArrayList<>();
    private final List<String> bad = new ArrayList<>();
    private final List<String> unproven = new ArrayList<>();

    void proven(String sentence) {
        proven.add(sentence);
    }

    void bad(String sentence) {
        bad.add(sentence);
    }

    /** Not bad, but not shown either. */
    void unproven(String sentence) {
        unproven.add(sentence);
    }

    public List<String> proven() {
        return List.copyOf(proven);
    }

    public List<String> bad() {
        return List.copyOf(bad);
    }

    public List<String> unproven() {
        return List.copyOf(unproven);
    }
}

package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Shots that make one stack, while it is being put together. */
public final class Group {
    /** A shot set aside. @param reason a sentence for the operator */
    public record Stray(Shot shot, String reason) {}

    private final @Nullable Long stack;
    private final List<Shot> slates = new ArrayList<>();
    private final List<Shot> sweep = new ArrayList<>();
    private final List<Shot> added = new ArrayList<>();
    private final List<Stray> strays = new ArrayList<>();
    private boolean closed;

    /** @param stack the sealed stack that it is, null for a new one */
    Group(@Nullable Long stack) {
        this.stack = stack;
    }

    /** The sealed stack that these shots belong to; null: a new one. */
    public @Nullable Long stack() {
        return stack;
    }

    public List<Shot> slates() {
        return slates;
    }

    /** In order of capture. */
    public List<Shot> sweep() {
        return sweep;
    }

    public List<Stray> strays() {
        return strays;
    }

    /** Whether it is sealed and stays as it is but for shots that are set aside. */
    public boolean isUnchanged() {
        return stack != null && slates.isEmpty() && added.isEmpty();
    }

    /** Whether it has no label yet that it needs. */
    boolean asks() {
        return stack == null && slates.isEmpty();
    }

    /** Whether another stack has begun after it. */
    public boolean closed() {
        return closed;
    }

    /** Whatever was not in the sealed stack before. */
    public List<Shot> fresh() {
        return Stream.of(slates.stream(), added.stream(), strays.stream().map(Stray::shot))
                .flatMap(s -> s)
                .toList();
    }

    void close() {
        closed = true;
    }

    void known(List<Shot> shots) {
        sweep.addAll(shots);
    }

    void sweep(List<Shot> shots) {
        sweep.addAll(shots);
        added.addAll(shots);
    }

    void slate(Shot shot) {
        slates.add(shot);
    }

    void stray(Shot shot, String reason) {
        strays.add(new Stray(shot, shot.name() + ": " + reason));
    }
}

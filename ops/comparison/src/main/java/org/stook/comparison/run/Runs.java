package org.stook.comparison.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/** Several runs of the same job; every figure is the median, NaN if there was no run. */
public final class Runs {
    private final List<Outcome> outcomes = new ArrayList<>();

    public void add(Outcome outcome) {
        outcomes.add(outcome);
    }

    /** Seconds. */
    public double wall() {
        return median(o -> o.usage().wallSeconds());
    }

    /** Seconds of all threads. */
    public double cpu() {
        return median(o -> o.usage().cpuSeconds());
    }

    /** Cores kept busy on average. */
    public double cores() {
        return median(o -> o.usage().cpuSeconds() / o.usage().wallSeconds());
    }

    /** Mebibytes. */
    public double peak() {
        return median(o -> o.usage().peakMebibytes());
    }

    /** Seconds that the garbage collector stopped the process. */
    public double collector() {
        return median(o -> o.usage().collectorSeconds());
    }

    /** Stages that any run tells of. */
    public Set<String> stages() {
        Set<String> stages = new TreeSet<>();
        outcomes.forEach(o -> stages.addAll(o.seconds().keySet()));
        return stages;
    }

    /** Seconds of one stage. */
    public double stage(String stage) {
        return median(o -> o.seconds().getOrDefault(stage, 0.0));
    }

    private double median(ToDoubleFunction<Outcome> figure) {
        double[] sorted = outcomes.stream().mapToDouble(figure).sorted().toArray();
        if (sorted.length == 0) return Double.NaN;
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}

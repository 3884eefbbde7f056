package org.stook.comparison.run;

/**
 * What a process took.
 *
 * @param wallSeconds from its start to its end
 * @param cpuSeconds of all its threads, user and system
 * @param peakMebibytes greatest resident set
 * @param collectorSeconds that the Java garbage collector stopped it
 */
public record Usage(double wallSeconds, double cpuSeconds, double peakMebibytes, double collectorSeconds) {}

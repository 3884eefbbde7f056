package org.stook.app.station;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.stook.orders.NamePattern;

/**
 * The settings of a station.
 *
 * @param splitting what separates one stack from the next
 * @param roles what the codes on slates mean: name of the role to the pattern that its codes match; the first group of a pattern,
 *     if it has one, is what counts. "subject" names the stack, "view" its view; others are kept with it
 * @param patience how long the intake waits
 * @param recipe tone settings and the rest of the recipe, as the worker reads them
 * @param priority of its runs, 0 to 100
 * @param names how what it publishes is named
 * @param clocks what is added to a camera's own time, by the serial number of its body (Exif BodySerialNumber) or, where it has none,
 *     by its model: two bodies are then in step, however their clocks are set
 */
public record StationSettings(
        Splitting splitting,
        Map<String, Pattern> roles,
        Patience patience,
        String recipe,
        int priority,
        NamePattern names,
        Map<String, Duration> clocks) {
    public static final String SUBJECT = "subject";
    public static final String VIEW = "view";

    /** What a subfolder of the station's folder is. */
    public enum Folders {
        /** One stack. */
        STACK,
        /** Frames of many stacks, sorted like those that lie loose in the station's folder. */
        STREAM
    }

    /** Where the frame of the label comes. */
    public enum Slates {
        /** Nowhere of need; one that can be read begins a stack. */
        NONE,
        /** Before the sweep. A sweep without one waits for a person. */
        FIRST,
        /** After the sweep. A sweep without one waits for a person. */
        LAST
    }

    /**
     * @param gap a longer pause between two captures begins a new stack
     * @param framing whether a change of framing or subject does
     * @param exposure whether a change of lens, exposure time, f-number or sensitivity does
     */
    public record Splitting(Folders folders, Slates slates, Duration gap, boolean framing, boolean exposure) {}

    /**
     * @param settle how long a file must look the same; at least the time a network share caches attributes
     * @param quiet how long nothing may change before the last stack is sealed
     * @param grace how long a file that stops early may still be arriving
     */
    public record Patience(Duration settle, Duration quiet, Duration grace) {}

    public StationSettings {
        roles = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(roles));
        clocks = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(clocks));
    }
}

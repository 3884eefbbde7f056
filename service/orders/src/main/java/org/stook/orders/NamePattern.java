package org.stook.orders;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * How a station names what it publishes: a path whose words in braces are filled in, such as
 * {@code {station}/{subject}_{view}/{run}-{hash}}. Names hold letters A to Z, digits, dot, dash and underscore only, so that
 * every file system, archive format and web address takes them as they are.
 */
public final class NamePattern {
    /** What holds where a station says nothing. */
    public static final NamePattern USUAL = new NamePattern("{subject}/{run}-{hash}");

    private static final List<String> WORDS = List.of("station", "subject", "view", "stack", "run", "hash");
    private static final Pattern WORD = Pattern.compile("\\{([^{}]*)\\}");
    private static final int LONGEST_VALUE = 80;
    private static final int LONGEST_PATTERN = 200;
    private static final Map<String, String> LETTERS = new TreeMap<>(Map.of(
            "\u00df", "ss", "\u00e6", "ae", "\u00c6", "AE", "\u00f8", "o", "\u00d8", "O", "\u0153", "oe", "\u0142",
            "l"));

    private final String pattern;

    private NamePattern(String pattern) {
        this.pattern = pattern;
    }

    /**
     * @param pattern path without an ending; it has {@code {run}} and {@code {hash}} in its last part, so that no name is ever
     *     used twice
     * @throws IllegalArgumentException saying what was found and what was expected
     */
    public static NamePattern of(String pattern) {
        Matcher words = WORD.matcher(pattern);
        while (words.find()) {
            if (!WORDS.contains(words.group(1))) {
                throw new IllegalArgumentException(
                        "found {%s}, expected one of {%s}".formatted(words.group(1), String.join("}, {", WORDS)));
            }
        }
        String last = pattern.substring(pattern.lastIndexOf('/') + 1);
        if (!last.contains("{run}") || !last.contains("{hash}")) {
            throw new IllegalArgumentException(
                    "found '" + pattern + "', expected {run} and {hash} in its last part, so that no name comes twice");
        }
        String rest = WORD.matcher(pattern).replaceAll("x");
        if (pattern.length() > LONGEST_PATTERN
                || !rest.matches("[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*")) {
            throw new IllegalArgumentException("found '" + pattern
                    + "', expected words in braces, letters A to Z, digits, dots, dashes and underscores in parts between"
                    + " slashes, " + LONGEST_PATTERN + " characters at most");
        }
        return new NamePattern(pattern);
    }

    /** The usual one where nothing is said, or nothing that makes sense: a run is not held up for its file's name. */
    public static NamePattern orUsual(@Nullable String pattern) {
        try {
            return pattern == null ? USUAL : of(pattern);
        } catch (IllegalArgumentException e) {
            return USUAL;
        }
    }

    /** @param values by word, as people wrote them; one that is missing counts as empty */
    String fill(Map<String, String> values) {
        List<String> parts = new ArrayList<>();
        for (String part : pattern.split("/", -1)) {
            String filled = WORD.matcher(part)
                    .replaceAll(word -> Matcher.quoteReplacement(plain(values.getOrDefault(word.group(1), ""))));
            // A word that is empty leaves its separators behind.
            String tidy = filled.replaceAll("([_-])[_-]*(?=[_-])", "").replaceAll("^[._-]+|[._-]+$", "");
            parts.add(tidy.isEmpty() ? "x" : tidy);
        }
        return String.join("/", parts);
    }

    /** Latin letters without their marks; everything else that is no letter, digit, dot or underscore becomes a dash. */
    static String plain(String text) {
        String latin = text;
        for (Map.Entry<String, String> letter : LETTERS.entrySet()) {
            latin = latin.replace(letter.getKey(), letter.getValue());
        }
        String clean = Normalizer.normalize(latin, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^A-Za-z0-9._]+", "-")
                .replaceAll("^[.-]+|[.-]+$", "");
        return clean.substring(0, Math.min(clean.length(), LONGEST_VALUE));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NamePattern p && p.pattern.equals(pattern);
    }

    @Override
    public int hashCode() {
        return pattern.hashCode();
    }

    @Override
    public String toString() {
        return pattern;
    }
}

package org.stook.imaging.composite;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version that stands in every report: the same version makes the same bytes of the same input. */
public final class EngineVersion {
    private static final String CURRENT = load();

    private EngineVersion() {}

    public static String current() {
        return CURRENT;
    }

    private static String load() {
        Properties properties = new Properties();
        try (InputStream in = EngineVersion.class.getResourceAsStream("engine.properties")) {
            if (in == null) throw new IllegalStateException("engine.properties is missing from the jar");
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version", "unknown");
    }
}

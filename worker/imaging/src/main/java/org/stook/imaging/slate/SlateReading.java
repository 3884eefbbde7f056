package org.stook.imaging.slate;

import java.util.List;

/**
 * What a picture shows of labels.
 *
 * @param codes what could be read, each text once, from the top left on
 * @param unread how many labels carry something like a code that no reader could read
 */
public record SlateReading(List<SlateCode> codes, int unread) {
    public SlateReading {
        codes = List.copyOf(codes);
    }
}

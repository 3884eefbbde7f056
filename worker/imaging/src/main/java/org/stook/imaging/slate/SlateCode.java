package org.stook.imaging.slate;

/**
 * A code that was read.
 *
 * @param symbology as {@link SlateReader#symbology()}
 * @param text what it says
 * @param x centre of the label or cluster it was found on, pixels from the left of the picture
 * @param y the same from the top
 */
public record SlateCode(String symbology, String text, int x, int y) {}

package org.stook.imaging.codec.raw;

/** Pixels of the picture that a raw file holds, as stored: its orientation is not applied. */
public record RawSize(int width, int height) {}

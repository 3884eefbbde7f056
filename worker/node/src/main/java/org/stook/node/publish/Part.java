package org.stook.node.publish;

import java.util.Locale;

/** The files of a publication, in the order of renaming: where the master stands, the others stand. */
public enum Part {
    /** Very small JPEG, sRGB. */
    THUMBNAIL(".thumb.jpg", "image/jpeg"),
    /** Small JPEG, sRGB. */
    PREVIEW(".preview.jpg", "image/jpeg"),
    /** JPEG of the full size in the master's colours. */
    DERIVATIVE(".jpg", "image/jpeg"),
    /** Which frame each pixel mostly came from. */
    SOURCE_MAP(".source.tif", "image/tiff"),
    /** Where in the sweep each pixel is sharpest. */
    DEPTH_MAP(".depth.tif", "image/tiff"),
    /** What was made of what. */
    RECORD(".json", "application/json"),
    /** The composite, 16-bit TIFF. */
    MASTER(".tif", "image/tiff");

    private final String ending;
    private final String mediaType;

    Part(String ending, String mediaType) {
        this.ending = ending;
        this.mediaType = mediaType;
    }

    /** Of its name. */
    public String ending() {
        return ending;
    }

    public String mediaType() {
        return mediaType;
    }

    /** As it is called in the record and in the database. */
    public String kind() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

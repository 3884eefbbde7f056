package org.stook.scenes.file;

/** How a frame is written. */
public enum FrameFormat {
    /** JPEG, quality 0.95, colour at full resolution (4:4:4). */
    JPEG("jpeg", "jpg"),
    /** JPEG, quality 0.95, colour at half resolution (4:2:0). */
    JPEG_420("jpeg420", "jpg"),
    /** TIFF, 8 bits a sample, not compressed. */
    TIFF_8("tiff8", "tif"),
    /** TIFF, 16 bits a sample, not compressed. */
    TIFF_16("tiff16", "tif");

    private final String word;
    private final String extension;

    FrameFormat(String word, String extension) {
        this.word = word;
        this.extension = extension;
    }

    /** As written on the command line. */
    public String word() {
        return word;
    }

    /** File name extension without a dot. */
    public String extension() {
        return extension;
    }

    boolean isTiff() {
        return this == TIFF_8 || this == TIFF_16;
    }

    /** Bits a sample. */
    public int bits() {
        return this == TIFF_16 ? 16 : 8;
    }
}

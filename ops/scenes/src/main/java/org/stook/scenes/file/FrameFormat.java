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
    TIFF_16("tiff16", "tif"),
    /** Camera raw: a DNG of 12 bits behind a colour filter array, not compressed. */
    DNG_12("dng12", "dng"),
    /** A DNG of 14 bits, not compressed. */
    DNG_14("dng14", "dng"),
    /** A DNG of 14 bits, lossless JPEG. */
    DNG_14_JPEG("dng14jpeg", "dng");

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

    /** Whether it is what the sensor counted, undeveloped. */
    public boolean isRaw() {
        return this == DNG_12 || this == DNG_14 || this == DNG_14_JPEG;
    }

    /** Bits a sample. */
    public int bits() {
        return switch (this) {
            case JPEG, JPEG_420, TIFF_8 -> 8;
            case DNG_12 -> 12;
            case DNG_14, DNG_14_JPEG -> 14;
            case TIFF_16 -> 16;
        };
    }
}

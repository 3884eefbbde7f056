package org.stook.node.publish;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The files and folders of a publication, in the order of renaming: where the master stands, the others stand. */
public enum Part {
    /** Folder of the composite in tiles, for deep zoom. */
    TILES(".tiles", "application/ld+json"),
    /** Folder of what it is reviewed with: placed frames and maps at reduced size. */
    REVIEW(".review", "application/json"),
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

    /** Of a part that is a folder, the file in it that says what else is there. */
    public Optional<String> contents() {
        return switch (this) {
            case TILES -> Optional.of("info.json");
            case REVIEW -> Optional.of("review.json");
            default -> Optional.empty();
        };
    }

    /** The file that records name: the part itself, or in a folder the one that says what else is there. */
    public Path recorded(Path part) {
        return contents().map(part::resolve).orElse(part);
    }

    /** As it is called in the record and in the database. */
    public String kind() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

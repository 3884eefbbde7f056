package org.stook.imaging.composite;

/** No composite can be made from these frames with these settings; trying again will not help. */
public final class CannotCompose extends Exception {
    private static final long serialVersionUID = 1;

    private final String code;

    CannotCompose(String code, String sentence) {
        super(sentence);
        this.code = code;
    }

    /** Stable short reason: no-frames, reference-missing, span-missing, cannot-register, no-common-area,
     * override-missing, override-outside. */
    public String code() {
        return code;
    }

    /** One sentence for a person; never null. */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}

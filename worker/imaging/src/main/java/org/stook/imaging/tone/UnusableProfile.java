package org.stook.imaging.tone;

/** An ICC profile that gives no way from code values to linear light, and why, in one sentence. */
public final class UnusableProfile extends Exception {
    private static final long serialVersionUID = 1;

    UnusableProfile(String found, String expected) {
        super("colour profile: found %s, expected %s".formatted(found, expected));
    }

    /** The sentence; never null. */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}

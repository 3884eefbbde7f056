package org.stook.imaging.blend;

import java.util.List;
import java.util.Optional;

/** The blend methods there are. A new one is one more line here. */
public final class BlendMethods {
    private static final List<BlendMethod> ALL = List.of(new RegionBlend(), new PyramidBlend());

    private BlendMethods() {}

    /** All methods; the first is the default. */
    public static List<BlendMethod> all() {
        return ALL;
    }

    /** The method used when the settings name none. */
    public static BlendMethod standard() {
        return ALL.get(0);
    }

    /** The method called {@code name}, if there is one. */
    public static Optional<BlendMethod> byName(String name) {
        return ALL.stream().filter(method -> method.name().equals(name)).findFirst();
    }
}

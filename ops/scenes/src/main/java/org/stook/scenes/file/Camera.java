package org.stook.scenes.file;

/**
 * A camera of an invented maker, set once for a bracket.
 *
 * @param make maker
 * @param model model
 * @param serial serial number of the body
 * @param iso sensitivity
 * @param exposure denominator of the exposure time: 60 is 1/60 s
 */
public record Camera(String make, String model, String serial, int iso, int exposure) {
    /** The camera of the Harrow Cabinet's station. */
    public static final Camera USUAL = new Camera("Tarnbeck", "Tarnbeck 45", "TB4500117", 100, 60);

    /** Another body of the same model. */
    public Camera withSerial(String other) {
        return new Camera(make, model, other, iso, exposure);
    }
}

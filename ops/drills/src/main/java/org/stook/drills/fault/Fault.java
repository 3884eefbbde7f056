package org.stook.drills.fault;

import java.util.Random;
import org.stook.drills.stage.Stage;

/** Something that goes wrong, and is well again when the call returns, unless it says otherwise. */
public interface Fault {
    String name();

    /**
     * Breaks something.
     *
     * @return how many faults that were; 0 if there was nothing to hit
     */
    int inflict(Stage stage, Random random) throws Exception;
}

package org.stook.drills.drill;

import java.util.List;
import java.util.Random;
import org.stook.drills.fault.Fault;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/**
 * One drill.
 *
 * @param name as on the command line
 * @param purpose a sentence
 * @param workers one setup a worker process
 * @param faults inflicted in turn by chance until their number is reached or everything is done
 * @param pace how many and how often
 * @param casting what is ordered, and what must have come of it
 */
public record Drill(
        String name, String purpose, List<Slot.Setup> workers, List<Fault> faults, Pace pace, Casting casting) {

    /**
     * @param faults how many at most
     * @param leastMillis between two
     * @param mostMillis between two
     */
    public record Pace(int faults, int leastMillis, int mostMillis) {
        static final Pace NONE = new Pace(0, 1, 2);

        long pause(Random random) {
            return leastMillis + random.nextInt(mostMillis - leastMillis);
        }
    }

    /** What is particular to a drill. */
    public interface Casting {
        /** Orders the runs. */
        void order(Stage stage, int runs, Random random) throws Exception;

        /** Faults that the workers did to themselves, which nobody inflicted: counted from their traces. */
        default int ownFaults(Stage stage) throws Exception {
            return 0;
        }

        /** Sentences on what came otherwise than it must, beyond what holds of every history. */
        List<String> verdict(Stage stage) throws Exception;
    }
}

package org.stook.node.publish;

import java.nio.file.Files;
import java.nio.file.Path;
import org.stook.orders.attempt.StagedResult;

/**
 * The files of one result and their two places. The master is what the fence and the official record name; its companions
 * share its name, the hash included, and are renamed before it: where the master stands, they stand.
 *
 * @param root of the output share
 * @param names of the master, staged and final
 */
record Bundle(Path root, StagedResult names) {
    Path staged(Part part) {
        return root.resolve(part == Part.MASTER ? names.stagedName() : names.stagedName() + part.ending());
    }

    /** The final name, relative to the share's root. */
    String name(Part part) {
        String name = names.finalName();
        return name.substring(0, name.length() - Part.MASTER.ending().length()) + part.ending();
    }

    Path placed(Part part) {
        return root.resolve(name(part));
    }

    /** The part where it is now, the final place first. */
    Path found(Part part) {
        return Files.exists(placed(part)) ? placed(part) : staged(part);
    }
}

package org.stook.studioday;

import java.util.List;

/**
 * A stack of the script.
 *
 * @param number from 0
 * @param subject as its label says
 * @param view likewise, empty for none
 * @param readable whether the label is there and can be read; if not, a person has to be asked
 * @param drops its files, in the order in which they arrive
 */
record Piece(int number, String subject, String view, boolean readable, List<Drop> drops) {
    String label() {
        return view.isEmpty() ? subject : subject + "/" + view;
    }
}

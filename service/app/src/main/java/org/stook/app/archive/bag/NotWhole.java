package org.stook.app.archive.bag;

/** A bag cannot be made because something that belongs in it is missing or damaged; the message names it. */
public final class NotWhole extends Exception {
    private static final long serialVersionUID = 1;

    NotWhole(String sentence) {
        super(sentence);
    }
}

/**
 * Reads slates: frames that show the label or barcode of a subject. Finds light labels and dark clusters on them in a picture of
 * any size and turn, cuts each out upright, and hands the cut to the readers of the symbologies. The symbologies are those of
 * ISO/IEC 18004 (QR code), ISO/IEC 16022 (Data Matrix ECC 200) and ISO/IEC 15417 (Code 128).
 *
 * <p>A wrong text is worse than none: a reader answers nothing unless the symbol's own check holds.
 *
 * <h2>How to add one</h2>
 *
 * <ol>
 *   <li>implement {@link org.stook.imaging.slate.SlateReader}: one symbology, from an upright or quarter-turned cut;
 *   <li>add it to the list in {@link org.stook.imaging.slate.SlateReaders};
 *   <li>extend {@code SlateReaderContract} in the tests and hand it a way to draw the symbol: it checks turns, blur, small
 *       modules, torn symbols, noise and the other symbologies.
 * </ol>
 */
@NullMarked
package org.stook.imaging.slate;

import org.jspecify.annotations.NullMarked;

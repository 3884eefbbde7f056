/**
 * Tones and colours, exact in linear light: one set of tone settings for every frame of a stack, colour spaces in and
 * out, evening out of flicker, colour difference.
 *
 * <p>The way of a sample: code value, linear light (the profile's own curve), white balance x exposure x flicker gain,
 * black and white point, mid-tone, contrast, then saturation or monochrome mix and the change of primaries, then the
 * output's curve. What concerns one channel at a time is compiled into one look-up table per channel, the same bits for
 * every frame; if nothing changes, code c becomes exactly {@code c / 255f} or {@code c / 65535f}.
 *
 * <p>All tables are made with {@link java.lang.StrictMath}, so that they are the same on every machine and runtime.
 *
 * <h2>How to add one</h2>
 *
 * <ul>
 *   <li>A tone step of one channel: a value in {@link org.stook.imaging.tone.ToneSettings} with its range and neutral
 *       value, and its line in {@code ToneCurve.light}; it must rise everywhere, so that clipping can be counted.
 *   <li>A colour space: a line in {@link org.stook.imaging.tone.ColourSpace} with primaries, white and curve, and the
 *       standard it comes from. Its written profile follows by itself.
 * </ul>
 */
@NullMarked
package org.stook.imaging.tone;

import org.jspecify.annotations.NullMarked;

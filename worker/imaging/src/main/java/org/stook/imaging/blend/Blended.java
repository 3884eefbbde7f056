package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * What a blend gives.
 *
 * @param composite encoded values, same size and channels as the frames
 * @param sourceMap per pixel the rank of the frame that contributes most, row-major, unsigned 16 bit
 * @param depthMap per pixel the sweep position with sub-frame precision, 0 to frames - 1; NaN where nothing decided it
 */
public record Blended(Frame composite, short[] sourceMap, Plane depthMap) {}

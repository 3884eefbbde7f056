/**
 * The pipeline that Stook is held against: what a competent engineer writes straightforwardly on a general-purpose vision library
 * (OpenCV), with nothing of Stook's in it.
 *
 * <p>Neighbours are registered at quarter size by maximising the enhanced correlation coefficient (G. D. Evangelidis, E. Z.
 * Psarakis, IEEE TPAMI 30(10) (2008) 1858-1865), the affine maps chained outwards from the reference frame; frames are warped by
 * bicubic interpolation and folded, one at a time, into a Laplacian pyramid (P. J. Burt, R. J. Kolczynski, Proc. ICCV 1993,
 * 173-182) that keeps at each place the coefficients of largest local energy; the composite is cropped to the common area and written
 * as a TIFF of 16 bits.
 */
@NullMarked
package org.stook.comparison.reference;

import org.jspecify.annotations.NullMarked;

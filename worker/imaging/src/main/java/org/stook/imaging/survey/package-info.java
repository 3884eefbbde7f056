/** What the frames themselves tell before anything is blended: sharpness by tile, exposure, order, strays, coverage. */
@NullMarked
package org.stook.imaging.survey;

import org.jspecify.annotations.NullMarked;

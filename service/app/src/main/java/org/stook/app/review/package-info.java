/**
 * What a person needs to judge a composite and to have it made otherwise: the published maps, frames and plots; crops and tones made
 * by the very code that the workers use; reviews; new runs with other settings.
 */
@NullMarked
package org.stook.app.review;

import org.jspecify.annotations.NullMarked;

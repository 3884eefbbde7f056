/**
 * Which shots make which stack: slates, pauses, changes of camera, exposure and framing, told apart by rules that are pure
 * functions of what is known of the shots. Knows no file and no database.
 */
@NullMarked
package org.stook.app.sorting;

import org.jspecify.annotations.NullMarked;

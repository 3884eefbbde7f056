/**
 * Stations and their settings: how arriving files are sorted, which tones are made, which runs go first. Settings are JSON, kept
 * in versions; a wrong value is refused with what was found and what was expected.
 */
@NullMarked
package org.stook.app.station;

import org.jspecify.annotations.NullMarked;

package org.stook.imaging.slate;

/** An upright piece of a picture, and where its centre lies in it. */
record Cut(GreyPicture picture, int x, int y) {}

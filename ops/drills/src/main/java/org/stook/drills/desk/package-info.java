/** What people see, under load: open dashboards, and how soon they show what happened. */
@NullMarked
package org.stook.drills.desk;

import org.jspecify.annotations.NullMarked;

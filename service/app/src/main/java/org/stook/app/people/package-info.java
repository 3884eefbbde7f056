/**
 * People, their roles, passwords and one-time codes, and the set-up code of the first start. Knows nothing of the web.
 *
 * <p>How to add a role: one constant in {@link org.stook.app.people.Role}, its name in the check of {@code stook.person},
 * and what it may do in {@code signin}'s rules.
 */
@NullMarked
package org.stook.app.people;

import org.jspecify.annotations.NullMarked;

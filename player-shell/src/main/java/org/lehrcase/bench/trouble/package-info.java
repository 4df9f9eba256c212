/**
 * What went wrong, in words for the person in front of it: what happened, what is safe, what to do
 * next. Every other package of the bench may throw it; nothing here knows of servers or databases.
 */
@NullMarked
package org.lehrcase.bench.trouble;

import org.jspecify.annotations.NullMarked;

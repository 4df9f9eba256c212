/**
 * The student's own database: places, licenses, known editions, positions, settings. The only
 * package of the bench that may use {@code java.sql}. One class per table, SQL as constants with
 * bound parameters. No course text lives here, only ids, signed files and wrapped keys; nothing in
 * here decides anything.
 */
@NullMarked
package org.lehrcase.bench.store;

import org.jspecify.annotations.NullMarked;

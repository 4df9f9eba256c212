/**
 * The sales book: people, licenses, places, packed editions, stable lesson identifiers, and an
 * append-only record of everything that happened, in one SQLite file.
 *
 * <p>No key and no secret ever comes here: keys are derived from the desk keys by identifiers that
 * this book holds. This is the only package of the desk that may use {@code java.sql}.
 */
@NullMarked
package org.lehrcase.desk.sales;

import org.jspecify.annotations.NullMarked;

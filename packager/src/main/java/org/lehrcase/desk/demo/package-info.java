/**
 * The whole job once through, with the invented course: a desk is set up, both series are packed, a
 * buyer is licensed, this laptop makes a card, the desk answers it, and the course opens.
 *
 * <p>Nothing here is used for real courses; everything lies in a folder to throw away.
 */
@NullMarked
package org.lehrcase.desk.demo;

import org.jspecify.annotations.NullMarked;

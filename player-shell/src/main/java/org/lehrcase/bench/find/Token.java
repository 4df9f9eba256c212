package org.lehrcase.bench.find;

/**
 * A word of a text.
 *
 * @param word in the form that is compared: lower case, without accents
 * @param from index of its first character in the text
 * @param to index behind its last character
 */
record Token(String word, int from, int to) {}

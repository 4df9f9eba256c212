package org.lehrcase.desk.sales;

import java.time.LocalDate;

/**
 * A buyer.
 *
 * @param id 16 hexadecimal digits, drawn once
 * @param name as it stands on the license
 * @param email where licenses and key letters go
 * @param since the day of the first entry
 */
public record Person(String id, String name, String email, LocalDate since) {}

package org.lehrcase.bench.firing;

import java.util.Optional;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.kiln.Controller;
import org.lehrcase.core.glass.kiln.KilnPower;

/**
 * The kiln of a request.
 *
 * @param pace how it goes by itself
 * @param paceGiven whether somebody measured the pace
 * @param controller what it can be told; empty if nothing was said of it
 * @param power what it uses; empty if not known
 * @param pricePerKwh price of a kilowatt hour; 0 if not known
 */
public record KilnRequest(
    KilnPace pace,
    boolean paceGiven,
    Optional<Controller> controller,
    Optional<KilnPower> power,
    double pricePerKwh) {}

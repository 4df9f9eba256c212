package org.lehrcase.core.layers.assign;

/** A plan, or why there is none. */
public sealed interface SheetAnswer permits SheetPlan, NoPlan {}

package org.lehrcase.bench.layers;

import java.util.List;
import java.util.Optional;
import org.lehrcase.core.layers.assign.InFront;
import org.lehrcase.core.layers.assign.Mode;
import org.lehrcase.core.layers.assign.Scene;
import org.lehrcase.core.layers.outline.Outline;

/**
 * A picture to be put on sheets.
 *
 * @param scene its subjects and what hides what
 * @param outlines by place; empty where nothing is drawn
 * @param inFront what was told and what was assumed
 * @param sheets how many
 * @param mode what "nearest in front" means
 * @param plannedOn sheets of a plan that exists, by place; empty if there is none
 * @param piece the glass and the kiln
 * @param unknown fields that mean nothing
 */
record SceneRequest(
    Scene scene,
    List<Optional<Outline>> outlines,
    InFront.Found inFront,
    int sheets,
    Mode mode,
    List<Integer> plannedOn,
    PieceRequest piece,
    List<String> unknown) {}

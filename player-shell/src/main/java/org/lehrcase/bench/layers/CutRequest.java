package org.lehrcase.bench.layers;

import java.util.List;
import org.lehrcase.core.layers.cut.CutPiece;
import org.lehrcase.core.layers.cut.CutWay;
import org.lehrcase.core.layers.cut.StockSize;

/**
 * A list to be cut.
 *
 * @param pieces what is wanted, ground edges added
 * @param stock what it is cut from, trim taken off
 * @param way how
 * @param forValue whether the most valuable pieces of one sheet are asked for, or all pieces
 * @param trimUm taken off every edge of the stock first
 * @param thicknessUm of the glass
 * @param unknown fields that mean nothing
 */
record CutRequest(
    List<CutPiece> pieces,
    List<StockSize> stock,
    CutWay way,
    boolean forValue,
    int trimUm,
    int thicknessUm,
    List<String> unknown) {}

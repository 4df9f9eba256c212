package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One stock sheet that is filled piece by piece: each goes into the upper left corner of a free
 * rectangle, and two end-to-end cuts leave at most two smaller ones. Fast, never wrong, not always
 * best.
 */
final class FreeRects {
  /** Which of the two cuts beside a piece runs the whole way. */
  enum Rule {
    /** The one that leaves the larger rectangle. */
    LARGEST_REST,
    /** The one across the shorter rest. */
    SHORT_REST,
    /** Always the upright one. */
    UPRIGHT,
    /** Always the level one. */
    LEVEL
  }

  /** A rectangle: free, holding a piece, or divided. */
  private static final class Room {
    private final int width;
    private final int height;
    private Optional<Fit> piece = Optional.empty();
    private final List<Room> parts = new ArrayList<>();
    private boolean upright;

    Room(int width, int height) {
      this.width = width;
      this.height = height;
    }

    long area() {
      return (long) width * height;
    }

    void divide(boolean isUpright, Room one, Room two) {
      upright = isUpright;
      parts.add(one);
      parts.add(two);
    }

    Optional<Block> block() {
      if (piece.isPresent()) {
        return Optional.of(new Block.Single(piece.get()));
      }
      Optional<Block> all = Optional.empty();
      for (Room part : parts) {
        Optional<Block> next = part.block();
        if (all.isPresent() && next.isPresent()) {
          Block one = all.get();
          Block two = next.get();
          all = Optional.of(upright ? Block.beside(one, two) : Block.stacked(one, two));
        } else if (next.isPresent()) {
          all = next;
        }
      }
      return all;
    }
  }

  private final Room whole;
  private final List<Room> free = new ArrayList<>();
  private final Rule rule;

  FreeRects(int width, int height, Rule rule) {
    this.whole = new Room(width, height);
    this.rule = rule;
    free.add(whole);
  }

  /** Puts a piece, in the better of its positions, into the smallest room that holds it. */
  boolean place(List<Fit> positions) {
    Room best = whole;
    Optional<Fit> chosen = Optional.empty();
    long least = Long.MAX_VALUE;
    for (Room room : free) {
      for (Fit fit : positions) {
        boolean holds = fit.width() <= room.width && fit.height() <= room.height;
        long slack =
            Math.min(room.width - fit.width(), room.height - fit.height()) + room.area() / 1000;
        if (holds && slack < least) {
          least = slack;
          best = room;
          chosen = Optional.of(fit);
        }
      }
    }
    if (chosen.isPresent()) {
      take(best, chosen.get());
    }
    return chosen.isPresent();
  }

  private void take(Room room, Fit fit) {
    free.remove(room);
    int right = room.width - fit.width();
    int below = room.height - fit.height();
    boolean upright =
        switch (rule) {
          case LARGEST_REST -> (long) right * room.height >= (long) below * room.width;
          case SHORT_REST -> right >= below;
          case UPRIGHT -> true;
          case LEVEL -> false;
        };
    Room rest;
    Room inner;
    Room second;
    Room corner = new Room(fit.width(), fit.height());
    if (upright) {
      rest = new Room(right, room.height);
      inner = new Room(fit.width(), room.height);
      second = new Room(fit.width(), below);
    } else {
      rest = new Room(room.width, below);
      inner = new Room(room.width, fit.height());
      second = new Room(right, fit.height());
    }
    corner.piece = Optional.of(fit);
    room.divide(upright, inner, rest);
    inner.divide(!upright, corner, second);
    keep(rest);
    keep(second);
  }

  private void keep(Room room) {
    if (room.area() > 0) {
      free.add(room);
    }
  }

  /** Returns what was placed; nothing if nothing was. */
  Optional<Block> block() {
    return whole.block();
  }
}

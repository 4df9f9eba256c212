package org.lehrcase.bench.opening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.id.Octets;

/**
 * What the format says about one laptop, in a few lines and without a key: which secrets its five
 * traits open, which cards wait, which licenses are active. The program must agree after each step.
 */
final class OpeningModel {
  /** Traits by slot; a number stands for a value. */
  private int[] traits = new int[5];

  private Bound current = Bound.NONE;
  private Bound previous = Bound.NONE;
  private int secrets;
  final List<Card> cards = new ArrayList<>();
  final Set<Integer> licenses = new HashSet<>();

  /** A secret under traits. */
  private record Bound(int secret, int[] traits) {
    static final Bound NONE = new Bound(-1, new int[0]);

    boolean opens(int[] now) {
      int same = 0;
      for (int slot = 0; slot < traits.length; slot++) {
        same += traits[slot] == now[slot] ? 1 : 0;
      }
      return same >= 3;
    }
  }

  /** A card of this laptop; {@code license} is -1 while nobody knows it. */
  static final class Card {
    final Octets bytes;
    final int seedSecret;
    int license;
    int owner = -1;
    int keySecret = -1;

    Card(Octets bytes, int license, int seedSecret) {
      this.bytes = bytes;
      this.license = license;
      this.seedSecret = seedSecret;
    }

    boolean isAnswered() {
      return owner >= 0;
    }
  }

  /** The program starts on a machine with these traits. */
  void start(int[] now) {
    traits = now.clone();
    if (current.opens(traits) && !Arrays.equals(current.traits(), traits)) {
      previous = current;
      current = new Bound(current.secret(), traits.clone());
    }
  }

  private List<Integer> open() {
    List<Integer> open = new ArrayList<>();
    if (current.opens(traits)) {
      open.add(current.secret());
    }
    if (previous.opens(traits) && !open.contains(previous.secret())) {
      open.add(previous.secret());
    }
    return open;
  }

  /** Returns the card that must be shown again, if one waits and can still be answered. */
  Optional<Card> waiting(int license) {
    for (int i = cards.size() - 1; i >= 0; i--) {
      Card card = cards.get(i);
      if (!card.isAnswered() && card.license == license && open().contains(card.seedSecret)) {
        return Optional.of(card);
      }
    }
    return Optional.empty();
  }

  void made(Octets bytes, int license) {
    if (open().isEmpty()) {
      previous = current;
      current = new Bound(secrets++, traits.clone());
    }
    cards.add(new Card(bytes, license, open().get(0)));
  }

  boolean canTake(Card card) {
    return open().contains(card.seedSecret) || opens(card);
  }

  boolean opens(Card card) {
    return card.isAnswered() && open().contains(card.keySecret);
  }

  void answered(Card card, int owner) {
    if (opens(card)) {
      return;
    }
    card.owner = owner;
    card.keySecret = open().get(0);
    if (card.license < 0 && licenses.contains(owner)) {
      card.license = owner;
    }
  }

  void accepted(int license) {
    licenses.add(license);
    for (Card card : cards) {
      if (card.license < 0 && card.owner == license && opens(card)) {
        card.license = license;
      }
    }
  }

  LicenseState state(int license) {
    LicenseState newest = LicenseState.NO_CARD;
    for (int i = cards.size() - 1; i >= 0; i--) {
      Card card = cards.get(i);
      if (card.license != license) {
        continue;
      }
      if (opens(card)) {
        return LicenseState.ACTIVE;
      }
      LicenseState state = card.isAnswered() ? LicenseState.SHUT : LicenseState.ASKED;
      newest = newest == LicenseState.NO_CARD ? state : newest;
    }
    return newest;
  }

  /** The course opens if the keys of some license are here and its row is too. */
  boolean courseOpens() {
    return cards.stream().anyMatch(card -> opens(card) && licenses.contains(card.owner));
  }
}
